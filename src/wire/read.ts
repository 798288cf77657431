import * as z from "zod/mini";
import type { Outcome, Refusal, RefusalCode } from "../outcome/index.ts";

interface Issue {
  readonly code: string;
  readonly path: readonly PropertyKey[];
  readonly message: string;
  readonly keys?: readonly string[];
  readonly errors?: readonly (readonly Issue[])[];
}

/** Of a choice between shapes, the fault deepest inside is what the sender most likely meant. */
function deepestOf(issue: Issue, before: readonly PropertyKey[] = []): Issue {
  const path = [...before, ...issue.path];
  const inner = (issue.errors ?? []).flatMap((branch) => branch.map((one) => deepestOf(one, path)));
  const best = inner.sort((a, b) => b.path.length - a.path.length)[0];
  return best && best.path.length > path.length ? best : { ...issue, path };
}

function refusalOf(issue: Issue, code: RefusalCode, place: string): Refusal {
  const { code: why, path, keys, message } = deepestOf(issue);
  const at = [place, ...path.map(String), ...(keys?.slice(0, 1) ?? [])].filter((part) => part !== "").join("/");
  // A pattern carries its own name as its message; every other issue is told apart by its kind.
  return { code, place: at, figures: { why: why === "invalid_format" ? message : why.replaceAll("_", " ") } };
}

/**
 * Reads an unknown value by a shape. The first fault becomes a refusal with the given code and the path as its place,
 * under `place`; its figure `why` says what kind of fault.
 */
export function read<S extends z.core.$ZodType>(shape: S, value: unknown, code: RefusalCode, place = ""): Outcome<z.output<S>> {
  const result = z.safeParse(shape, value);
  if (result.success) return { ok: true, value: result.data };
  const first = result.error.issues[0] as unknown as Issue;
  return { ok: false, refusal: refusalOf(first, code, place) };
}
