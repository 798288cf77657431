import { refuse } from "#core/outcome/index.ts";
import { LARGEST_MARK, markMade } from "#core/wire/index.ts";
import { markKeys } from "#functions/shared/index.ts";
import { bodyOf } from "../body.ts";
import { json, officeUp, route } from "./route.ts";

export const putMark = route({
  method: "PUT",
  path: "/api/company/mark",
  says: "Takes the company's mark as PNG, JPEG or SVG; only what is drawn anew from it is ever shown. The settings then name it",
  who: officeUp,
  takes: "bytes",
  largest: LARGEST_MARK,
  gives: { 201: markMade },
  async run({ services, session, request }) {
    const bytes = await bodyOf(request, LARGEST_MARK);
    if (bytes === undefined) return refuse("mark-too-large", "mark", { most: LARGEST_MARK });
    const mark = await services.digest(new Uint8Array(bytes));
    const about = { length: bytes.length, type: "application/octet-stream", sha256: mark };
    const put = await services.store.put(markKeys(session.company, mark).sent, bytes, about);
    if (!put.ok) return put;
    const drawn = await services.machines.drawMark(session.company, mark);
    return drawn.ok ? json({ mark, ...drawn.value }, 201) : drawn;
  },
});
