import type { Live } from "../live.ts";
import type { Instance } from "../series.ts";
import { itemNamed } from "../sheet.ts";
import { factsOf, type JobState } from "../state.ts";
import { cardLines } from "./card-lines.ts";
import { lookAt } from "./looks.ts";
import { photosRead } from "./photo-read.ts";
import { contra, neither, type PictureLine, pro } from "./picture-line.ts";
import { whenLines } from "./when-lines.ts";
import { whereLines } from "./where-lines.ts";

export { lookAt, lookBehind } from "./looks.ts";
export type { Fix } from "./photo-read.ts";
export type { PictureLine } from "./picture-line.ts";
export { picturesToLookAt, type ToLookAt } from "./to-look-at.ts";
export { type AwayFromSite, awayFromSite } from "./where-lines.ts";

const kinds: ReadonlySet<string> = new Set(["picture-taken", "received-otherwise"]);

function instanceOf(state: JobState, { what }: Live): Instance | undefined {
  const item = state.sheet && itemNamed(state.sheet, String(what.item));
  return item && { item, ...(typeof what.tag === "string" ? { tag: what.tag } : {}) };
}

/** Who looked at it, and what he saw: the one thing that settles what it shows. */
function lookLines(state: JobState, { id }: Live): readonly PictureLine[] {
  const look = lookAt(state, id);
  if (look === undefined) return [neither("nobody-looked")];
  const figures = { lookedEntry: look.id, lookedInstant: Math.round(look.at) };
  if (look.what.says === "shows it") return [pro("looked-shows", figures)];
  return look.what.says === "cannot tell" ? [neither("looked-cannot-tell", figures)] : [contra("looked-does-not", figures)];
}

/** The same photo put to another picture of the job: it may well show both. */
function twiceLines(state: JobState, { id, what }: Live): readonly PictureLine[] {
  const same = [...kinds]
    .flatMap((kind) => state.byKind.get(kind) ?? [])
    .filter((other) => other.id !== id && other.what.photo === what.photo);
  return same.length === 0 ? [] : [neither("same-photo", { count: String(same.length) })];
}

function seenLines(state: JobState, { what }: Live): readonly PictureLine[] {
  if (photosRead(state, "all").get(String(what.photo))?.unreadable) return [contra("cannot-be-read")];
  return what.judged === "unreadable" ? [contra("too-poor-on-phone")] : [];
}

function howLines(state: JobState, { kind, what }: Live): readonly PictureLine[] {
  const received =
    kind === "received-otherwise" ? [neither("received-otherwise", { how: typeof what.how === "string" ? what.how : "" })] : [];
  const blurred = factsOf(state, "region-blurred").some((fact) => fact.what.photo === what.photo);
  return blurred ? [...received, neither("blurred-in-part")] : received;
}

/**
 * What speaks for and against a picture, each line a fact: how it came, when, where, whether it can be seen, who looked. A
 * function of the ledger alone; empty for what is no picture of the
 * job's tolerance sheet, or counts no more.
 */
export function pictureFacts(state: JobState, picture: Live): readonly PictureLine[] {
  const instance = kinds.has(picture.kind) && picture.standing === "counts" ? instanceOf(state, picture) : undefined;
  if (instance === undefined) return [];
  return [
    ...howLines(state, picture),
    ...cardLines(state, instance, picture),
    ...whenLines(state, instance, picture),
    ...whereLines(state, picture),
    ...twiceLines(state, picture),
    ...seenLines(state, picture),
    ...lookLines(state, picture),
  ];
}
