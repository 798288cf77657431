import { useEffect, useState } from "preact/hooks";
import type { ToleranceSheet } from "../../job/index.ts";
import type { VersionView } from "../../wire/index.ts";
import { ask } from "../parts/edge.ts";

export interface SheetTaken {
  readonly digest: string;
  readonly content: ToleranceSheet;
}

/** The content of one version of the company's things; undefined while it is on its way. */
export async function versionContent<T>(digest: string): Promise<T | undefined> {
  const answer = await ask<VersionView>(`/api/company/versions/${digest}`);
  return answer.is === "given" ? (answer.value.content as unknown as T) : undefined;
}

/** A tolerance sheet by its digest. */
export function useSheet(digest: string): SheetTaken | undefined {
  const [sheet, setSheet] = useState<SheetTaken>();
  useEffect(() => {
    let current = true;
    if (digest === "") setSheet(undefined);
    else
      void versionContent<ToleranceSheet>(digest).then((content) => {
        if (current) setSheet(content && { digest, content });
      });
    return () => {
      current = false;
    };
  }, [digest]);
  return sheet?.digest === digest ? sheet : undefined;
}
