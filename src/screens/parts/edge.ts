import type { WireProblem } from "../../wire/index.ts";

/** What came of asking the edge: an answer, a refusal with its reason, or nothing, because it could not be reached. */
export type Answer<T> =
  | { readonly is: "given"; readonly value: T }
  | { readonly is: "refused"; readonly problem: WireProblem }
  | { readonly is: "away" };

/** A record is printed while the one who asked waits. */
const PATIENCE = { read: 20_000, write: 120_000 } as const;

async function problemOf(response: Response): Promise<WireProblem | undefined> {
  if (!(response.headers.get("content-type") ?? "").includes("json")) return undefined;
  const body = (await response.json().catch(() => undefined)) as Partial<WireProblem> | undefined;
  return typeof body?.code === "string" ? (body as WireProblem) : undefined;
}

async function answerOf<T>(request: Promise<Response>): Promise<Answer<T>> {
  try {
    const response = await request;
    if (response.status === 204) return { is: "given", value: undefined as T };
    if (response.ok) return { is: "given", value: (await response.json()) as T };
    const problem = await problemOf(response);
    return problem === undefined ? { is: "away" } : { is: "refused", problem };
  } catch {
    return { is: "away" };
  }
}

/** Reads. A server that is in trouble for now (5xx) counts as away: what is shown stays. */
export async function ask<T>(path: string): Promise<Answer<T>> {
  const answer = await answerOf<T>(fetch(path, { headers: { accept: "application/json" }, signal: AbortSignal.timeout(PATIENCE.read) }));
  return answer.is === "refused" && answer.problem.status >= 500 ? { is: "away" } : answer;
}

/** Asks for something to be done. `from`: digest of the version that was edited, refused where another has come meanwhile. */
export const tell = <T>(path: string, body?: unknown, method: "POST" | "PUT" | "DELETE" = "POST", from?: string): Promise<Answer<T>> =>
  answerOf<T>(
    fetch(path, {
      method,
      headers: {
        accept: "application/json",
        "x-asburied": "1",
        ...(body === undefined ? {} : { "content-type": "application/json" }),
        ...(from === undefined ? {} : { "if-match": `"${from}"` }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      signal: AbortSignal.timeout(PATIENCE.write),
    }),
  );

/** Sends a file as it is. */
export const sendFile = <T>(method: "POST" | "PUT", path: string, file: Blob, patience: number = PATIENCE.write): Promise<Answer<T>> =>
  answerOf<T>(
    fetch(path, { method, headers: { accept: "application/json", "x-asburied": "1" }, body: file, signal: AbortSignal.timeout(patience) }),
  );
