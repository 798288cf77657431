import type { Json } from "../ledger/index.ts";
import { type Outcome, refuse } from "../outcome/index.ts";
import { admitNames, fine } from "./admit-names.ts";
import type { Entry, FactKind, Whats } from "./fact.ts";
import { type Live, whatOf } from "./live.ts";
import { readSheet } from "./sheet-reading.ts";
import type { JobState } from "./state.ts";
import { isUnderstood } from "./what-shape.ts";
import { type Writer, writers } from "./writers.ts";

type What = { readonly [key: string]: Json };

const knownKind = (kind: string): kind is FactKind => Object.hasOwn(writers, kind);

function admitVersion({ ledger }: JobState, { thing, digest }: Whats["version-taken-over"]): Outcome<void> {
  const content = Object.hasOwn(ledger.versions, digest) ? ledger.versions[digest] : undefined;
  if (content === undefined) return refuse("entry-unknown-version", "what/digest", { digest });
  const sheet = thing === "sheet" ? readSheet(content) : undefined;
  return sheet && !sheet.ok ? sheet : fine;
}

/** What a correction corrects in the end, where it is known here: one that names a correction goes on with what that one named. */
function correctedBy(state: JobState, id: string): Live | undefined {
  const seen = new Set<string>();
  let found = state.facts.find((fact) => fact.id === id);
  while (found?.kind === "corrected" && found.standing === "counts" && !seen.has(found.id)) {
    seen.add(found.id);
    const { entry } = whatOf(found, "corrected");
    found = state.facts.find((fact) => fact.id === entry.id);
  }
  return found;
}

/** Nobody corrects what he may not write, nor whose word it was; the new words are such as the entry itself could have had. */
function admitCorrection(state: JobState, { entry, replace = {} }: Whats["corrected"], writer: Writer): Outcome<void> {
  const corrected = correctedBy(state, entry.id);
  if (Object.hasOwn(replace, "role")) return refuse("entry-role", "what/replace/role", { kind: "corrected", role: writer });
  if (corrected === undefined || !knownKind(corrected.kind)) return fine;
  if (!writers[corrected.kind].includes(writer)) return refuse("entry-role", "what/entry", { kind: corrected.kind, role: writer });
  if (Object.keys(replace).length === 0) return fine;
  const outcome = admitWords(state, corrected.kind, { ...corrected.what, ...replace }, writer);
  return outcome.ok
    ? outcome
    : { ok: false, refusal: { ...outcome.refusal, place: outcome.refusal.place.replace("what", "what/replace") } };
}

function admitWords(state: JobState, kind: FactKind, what: What, writer: Writer): Outcome<void> {
  if (!isUnderstood(kind, what)) return refuse("entry-shape", "what", { wanted: "an object" });
  if (kind === "version-taken-over") return admitVersion(state, what as unknown as Whats["version-taken-over"]);
  if (kind === "corrected") return admitCorrection(state, what as unknown as Whats["corrected"], writer);
  return admitNames(state, kind, what);
}

/**
 * Whether an entry may join the ledger of this job: who writes it, and whether what it names is there. Its shape has been
 * read before (`wire`). An unknown kind is let in: a newer phone's facts are kept. References to other entries are not
 * looked up: two phones' entries may arrive in either order.
 */
export function admit(state: JobState, entry: Entry, writer: Writer): Outcome<void> {
  const { kind, what } = entry;
  if (!knownKind(kind)) return fine;
  if (!writers[kind].includes(writer)) return refuse("entry-role", "kind", { kind, role: writer });
  if (typeof what !== "object" || what === null || Array.isArray(what)) return refuse("entry-shape", "what", { wanted: "an object" });
  const words = what as What;
  if (typeof words.role === "string" && words.role !== writer) return refuse("entry-role", "what/role", { kind, role: writer });
  return admitWords(state, kind, words, writer);
}
