import { type Outcome, ok, refuse } from "../outcome/index.ts";
import {
  type Author,
  type Body,
  type Digest,
  type Envelope,
  type Head,
  type Json,
  type Part,
  type PartName,
  partNames,
  type Sealed,
} from "./envelope.ts";
import { entryDigest, partDigest, sealedOf } from "./hashes.ts";

/** What the phone knows of an entry before it is sealed. Id and salts are chance and the clock is a clock: handed in. */
export interface Draft {
  readonly job: string;
  readonly id: string;
  readonly kind: string;
  readonly author: Author;
  readonly run: number;
  readonly made: number;
  readonly contents: { readonly [P in PartName]?: Json };
  /** One for each content, 64 hex digits, no two alike. */
  readonly salts: { readonly [P in PartName]?: string };
}

export interface SealedEntry {
  readonly sealed: Sealed;
  readonly body: Body;
  /** The entry's digest: with its id, the name by which other entries refer to it. */
  readonly digest: string;
}

function partsOf(draft: Draft): Outcome<readonly (readonly [PartName, Part])[]> {
  const parts: (readonly [PartName, Part])[] = [];
  const used = new Set<string>();
  for (const name of partNames) {
    const content = draft.contents[name];
    if (content === undefined) continue;
    const salt = draft.salts[name];
    // A salt shared by two parts would let who holds one of them try guesses at the other.
    if (salt === undefined || used.has(salt)) return refuse("ledger-salt", `salts/${name}`);
    used.add(salt);
    parts.push([name, { salt, content }]);
  }
  return ok(parts);
}

/**
 * Seals an entry on the phone. Refuses `ledger-salt` (missing, not 64 hex digits, used twice), `ledger-shape` (an empty text,
 * a number that is no integer) and what has no canonical form.
 */
export async function seal(digest: Digest, draft: Draft): Promise<Outcome<SealedEntry>> {
  const named = partsOf(draft);
  if (!named.ok) return named;
  const parts: { [P in PartName]?: string } = {};
  const body: { [P in PartName]?: Part } = {};
  for (const [name, part] of named.value) {
    const made = await partDigest(digest, part);
    if (!made.ok) return refuse(made.refusal.code, `${name}/${made.refusal.place}`, made.refusal.figures);
    parts[name] = made.value;
    body[name] = part;
  }
  const { job, id, kind, author, run, made } = draft;
  const sealed: Sealed = { format: 1, job, id, kind, author: { person: author.person, phone: author.phone }, run, made, parts };
  const whole = await entryDigest(digest, sealed);
  return whole.ok ? ok({ sealed, body, digest: whole.value }) : whole;
}

/** Gives a sealed entry its place after `head`. `sent` is the phone's clock, `received` the edge's, in ms since 1970 UTC. */
export function chain(head: Head, sealed: Sealed, sent: number, received: number): Envelope {
  return { ...sealedOf(sealed), number: head.number + 1, sent, received, before: head.hash };
}
