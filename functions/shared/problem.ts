import type { Figures, Refusal, RefusalCode } from "#core/outcome/index.ts";
import { statusOf } from "./status.ts";

/** An RFC 9457 problem document with the refusal's own members. */
export interface Problem {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  /** What is wrong and how to fix it, in the reader's language. */
  readonly detail: string;
  readonly code: RefusalCode;
  readonly place: string;
  readonly column?: number;
  readonly figures: Figures;
  readonly requestId?: string;
}

/** Makes the sentence of a refusal; the dictionaries are in `src/record`. */
export type Say = (refusal: Refusal) => string;

export const PROBLEM_TYPE = "application/problem+json";

export function problem(refusal: Refusal, status: number, sentence: string, requestId?: string): Problem {
  const { code, place, column, figures } = refusal;
  return {
    type: `urn:asburied:refusal:${code}`,
    title: titleOf(code),
    status,
    detail: sentence,
    code,
    place,
    ...(column === undefined ? {} : { column }),
    figures,
    ...(requestId === undefined ? {} : { requestId }),
  };
}

/** A refusal as a finished response, its status from the one table. */
export function problemResponse(refusal: Refusal, say: Say, requestId?: string): Response {
  const status = statusOf[refusal.code];
  // RFC 9110, 10.2.3: after how many seconds
  const { seconds } = refusal.figures;
  return new Response(JSON.stringify(problem(refusal, status, say(refusal), requestId)), {
    status,
    headers: {
      "content-type": PROBLEM_TYPE,
      "cache-control": "no-store",
      ...((status === 429 || status === 503) && typeof seconds === "number" ? { "retry-after": String(seconds) } : {}),
    },
  });
}

/** The same for every occurrence of a code, as RFC 9457 section 3.1.3 wants of a title. */
function titleOf(code: RefusalCode): string {
  const words = code.replaceAll("-", " ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}
