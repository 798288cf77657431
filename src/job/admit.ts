import type { Json } from "../ledger/index.ts";
import { type Outcome, ok, refuse } from "../outcome/index.ts";
import { readQuantity } from "../reading/index.ts";
import { type About, type Entry, type FactKind, type Writer, writers } from "./fact.ts";
import type { Item, ToleranceSheet } from "./sheet.ts";
import type { JobState } from "./state.ts";

type What = { readonly [key: string]: Json };

const fine: Outcome<void> = ok(undefined);
const knownKind = (kind: string): kind is FactKind => Object.hasOwn(writers, kind);

const itemKinds: Readonly<Record<string, Item["kind"]>> = {
  "reading-taken": "reading",
  "picture-taken": "picture",
  "received-otherwise": "picture",
  answered: "answer",
};

function admitTag(state: JobState, set: string | undefined, tag: Json | undefined): Outcome<void> {
  if (set === undefined) return tag === undefined ? fine : refuse("entry-unknown-tag", "what/tag", { tag: String(tag) });
  return state.tags.some((t) => t.set === set && t.tag === tag)
    ? fine
    : refuse("entry-unknown-tag", "what/tag", { tag: String(tag ?? "") });
}

function admitItem(state: JobState, sheet: ToleranceSheet, kind: string, what: What): Outcome<void> {
  const item = sheet.items.find((i) => i.id === what.item && i.kind === itemKinds[kind]);
  if (item === undefined) return refuse("entry-unknown-item", "what/item", { item: String(what.item ?? "") });
  const tag = admitTag(state, item.tags, what.tag);
  if (!tag.ok) return tag;
  if (kind === "answered" && !item.choices?.some((c) => c.id === what.choice))
    return refuse("entry-unknown-item", "what/choice", { item: String(what.choice ?? "") });
  if (kind !== "reading-taken") return fine;
  const read = readQuantity(String(what.typed ?? ""), {
    kind: item.quantity ?? "length",
    unit: String(what.unit ?? ""),
    signed: item.signed === true,
    place: "what/typed",
  });
  if (!read.ok) return read;
  if (item.inSetUp && typeof what.setUp !== "string") return refuse("entry-unknown-setup", "what/setUp", { setUp: "" });
  return fine;
}

function admitAbout(state: JobState, sheet: ToleranceSheet, about: About, place: string): Outcome<void> {
  const thing = about.item !== undefined ? sheet.items.find((i) => i.id === about.item) : sheet.checks.find((c) => c.id === about.check);
  if (thing === undefined) return refuse("entry-unknown-item", place, { item: about.item ?? about.check ?? "" });
  if (about.tag === undefined || state.tags.some((t) => t.tag === about.tag)) return fine;
  return refuse("entry-unknown-tag", `${place}/tag`, { tag: about.tag });
}

const needsCovering: ReadonlySet<string> = new Set(["covering-announced", "covered", "opened-up-again", "go-ahead"]);

function admitNames(state: JobState, sheet: ToleranceSheet, kind: string, what: What): Outcome<void> {
  if (kind in itemKinds) return admitItem(state, sheet, kind, what);
  if (needsCovering.has(kind) && !sheet.coverings.some((c) => c.id === what.covering))
    return refuse("entry-unknown-covering", "what/covering", { covering: String(what.covering ?? "") });
  if (kind === "tag-named") {
    const set = sheet.tagSets.find((t) => t.id === what.set);
    if (set === undefined) return refuse("entry-unknown-tag", "what/set", { tag: String(what.set ?? "") });
    return set.coverings.includes(String(what.hiddenBy))
      ? fine
      : refuse("entry-unknown-covering", "what/hiddenBy", { covering: String(what.hiddenBy ?? "") });
  }
  if (kind === "set-up-made" && !sheet.instruments.some((i) => i.id === what.instrument))
    return refuse("entry-unknown-item", "what/instrument", { item: String(what.instrument ?? "") });
  const about = what.about;
  return typeof about === "object" && about !== null && !Array.isArray(about)
    ? admitAbout(state, sheet, about as unknown as About, "what/about")
    : fine;
}

/** Kinds that name things of the tolerance sheet, and so need one. */
const needsSheet: ReadonlySet<string> = new Set([
  ...Object.keys(itemKinds),
  ...needsCovering,
  "tag-named",
  "set-up-made",
  "does-not-apply",
  "could-not-be-taken",
  "rework-asked",
  "reworked",
  "departure-agreed",
  "concession",
  "looked-again",
]);

/**
 * Whether an entry may join the ledger of this job: who writes it, and whether what it names is there. Its shape has been
 * read before (`wire`). An unknown kind is let in: a newer phone's facts are kept. References to other entries are not
 * looked up: two phones' entries may arrive in either order.
 */
export function admit(state: JobState, entry: Entry, writer: Writer): Outcome<void> {
  if (!knownKind(entry.kind)) return fine;
  if (!writers[entry.kind].includes(writer)) return refuse("entry-role", "kind", { kind: entry.kind, role: writer });
  const what = entry.what;
  if (typeof what !== "object" || what === null || Array.isArray(what)) return refuse("entry-shape", "what", { wanted: "an object" });
  const words = what as What;
  if (typeof words.role === "string" && words.role !== writer) return refuse("entry-role", "what/role", { kind: entry.kind, role: writer });
  if (entry.kind === "version-taken-over" && !Object.hasOwn(state.ledger.versions, String(words.digest)))
    return refuse("entry-unknown-version", "what/digest", { digest: String(words.digest ?? "") });
  if (!needsSheet.has(entry.kind)) return fine;
  return state.sheet === undefined
    ? refuse("entry-unknown-version", "job", { digest: "" })
    : admitNames(state, state.sheet, entry.kind, words);
}
