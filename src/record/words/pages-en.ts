import type { RefusalCode } from "../../outcome/index.ts";

/** What the edge says on a page of its own, to whom no app stands by, in English; the refusal's own sentence stands below. */
export type PageCode = Extract<RefusalCode, "link-unknown" | "release-ended" | "route-unknown">;

export const pagesEn: Readonly<Record<PageCode, string>> = {
  "link-unknown": "This link does not work",
  "release-ended": "This link has ended",
  "route-unknown": "Nothing is here",
};
