/** Where in the app somebody is; the address says it, so that a place can be sent to somebody else. */
export type Place =
  | { readonly page: "jobs" }
  /** `part` and what follows it name a page inside the job; of the crew's pages only. */
  | { readonly page: "job"; readonly job: string; readonly part?: string; readonly rest: readonly string[] }
  /** A page of the phone itself, such as what is not sent. */
  | { readonly page: "phone"; readonly part: string }
  /** A page of the office that is about no single job; `name`: of the one of the company's things that it is about. */
  | { readonly page: "office"; readonly part: string; readonly name?: string }
  /** One question of the company owner's. */
  | { readonly page: "owner"; readonly question: string }
  /** Where a record is checked; nobody need be signed in. */
  | { readonly page: "check" }
  /** Where a crew's phone is taken into use. */
  | { readonly page: "join" }
  /** One's own passkeys and devices; `first`: right after a one-time link. */
  | { readonly page: "access"; readonly first: boolean }
  | { readonly page: "unknown" };

const ID = /^[A-Za-z0-9][A-Za-z0-9_-]{0,63}$/;

function decoded(piece: string): string | undefined {
  try {
    return decodeURIComponent(piece);
  } catch {
    return undefined;
  }
}

/** The place that a path names. */
export function placeOf(path: string): Place {
  const pieces = path
    .split("/")
    .filter((piece) => piece !== "")
    .map(decoded);
  if (pieces.some((piece) => piece === undefined)) return { page: "unknown" };
  const [first, second, part, ...rest] = pieces as string[];
  if (first === undefined) return { page: "jobs" };
  if (first === "jobs" && second !== undefined && ID.test(second))
    return { page: "job", job: second, ...(part === undefined ? {} : { part }), rest };
  if (first === "phone" && second !== undefined && part === undefined) return { page: "phone", part: second };
  if (first === "owner" && second !== undefined && part === undefined) return { page: "owner", question: second };
  if (first === "check" && second === undefined) return { page: "check" };
  if (first === "join" && second === undefined) return { page: "join" };
  if ((first === "access" || first === "first-passkey") && second === undefined)
    return { page: "access", first: first === "first-passkey" };
  if (first === "office" && second !== undefined && rest.length === 0)
    return { page: "office", part: second, ...(part === undefined ? {} : { name: part }) };
  return { page: "unknown" };
}

/** The path of a job, or of a page inside it. */
export const jobPath = (job: string, ...inside: readonly string[]): string => ["/jobs", job, ...inside.map(encodeURIComponent)].join("/");
export const phonePath = (part: string): string => `/phone/${part}`;
export const ownerPath = (question: string): string => `/owner/${encodeURIComponent(question)}`;
export const CHECK_PATH = "/check";
export const JOIN_PATH = "/join";
export const ACCESS_PATH = "/access";
export const officePath = (...parts: readonly string[]): string => ["/office", ...parts.map(encodeURIComponent)].join("/");
