import { coloursPrinted } from "./colours.ts";
import type { RecordInput } from "./context-of.ts";
import type { RecordModel } from "./model.ts";
import type { CompanySettings } from "./settings.ts";

/** The company as the title block has it; its mark only where it can be printed. */
export function companyView({ name, lines, mark, colours }: CompanySettings, photos: RecordInput["photos"]): RecordModel["company"] {
  const rendition = mark === undefined ? undefined : photos[mark]?.rendition;
  return {
    name,
    lines,
    ...(mark !== undefined && rendition !== undefined && { mark: { photo: mark, rendition } }),
    ...(colours && { colours: coloursPrinted(colours) }),
  };
}
