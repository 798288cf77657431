import { type Role, type Writer, writers } from "#core/job/index.ts";
import {
  arrivalFaults,
  type Body,
  type Digest,
  entryDigest,
  isWithheld,
  type Json,
  type PartName,
  type Sealed,
} from "#core/ledger/index.ts";
import { type Outcome, ok, type Refusal, refuse } from "#core/outcome/index.ts";
import { LARGEST_BODY, read, readWhat, sentEntry } from "#core/wire/index.ts";
import type { PersonRow } from "../adapters/companies.ts";
import { fromPhone, type Incoming } from "./item.ts";

/** Who sends a batch, and for whom that session may speak. */
export interface Sender {
  readonly person: string;
  readonly role: Role;
  readonly people: readonly PersonRow[];
}

/** A phone's batch is judged entry by entry against these. */
export interface Expected {
  readonly digest: Digest;
  readonly job: string;
  readonly sender: Sender;
  readonly sent: number;
  /** The edge's own acts use this with `program`, so that kinds no person may write are not refused. */
  readonly writer?: Writer;
}

/** The id of an entry however bad the rest of it is, so that its phone can tell which was refused. */
export const idOf = (raw: unknown): string => {
  const id = (raw as { sealed?: { id?: unknown } } | null)?.sealed?.id;
  return typeof id === "string" ? id.slice(0, 80) : "";
};

/** Judges one entry as it came: shape, size, digests, author, role, what it says. */
export async function arrived(raw: unknown, place: string, expected: Expected): Promise<Outcome<Incoming>> {
  const shaped = read(sentEntry, raw, "entry-shape", place);
  if (!shaped.ok) return clockOr(shaped.refusal, place);
  const { digest: claimed } = shaped.value;
  const sealed = shaped.value.sealed as Sealed;
  const body = shaped.value.body as Body;
  if (sealed.job !== expected.job) return refuse("ledger-job", `${place}/sealed/job`, {});
  const fault = (await arrivalFaults(expected.digest, sealed, body))[0];
  if (fault) return { ok: false, refusal: { ...fault, place: `${place}/${fault.place}` } };
  const size = new TextEncoder().encode(JSON.stringify(body)).length;
  if (size > LARGEST_BODY) return refuse("entry-body-size", `${place}/body`, { bytes: size, most: LARGEST_BODY });
  const digest = await entryDigest(expected.digest, sealed);
  if (!digest.ok) return digest;
  if (claimed !== undefined && claimed !== digest.value) return refuse("entry-digest-differs", `${place}/digest`, {});
  const writer = writerOf(sealed, place, expected.sender);
  if (!writer.ok) return writer;
  const mayWrite = expected.writer ?? writer.value;
  const role = roleFault(sealed.kind, place, mayWrite);
  if (role) return { ok: false, refusal: role };
  const what = readWhat(sealed.kind, contentOf(body, "what"), `${place}/what`);
  if (!what.ok) return what;
  return ok(fromPhone({ sealed, body, digest: digest.value }, place, mayWrite, expected.sent));
}

export function contentOf(body: Body, part: PartName): Json | undefined {
  const kept = body[part];
  return kept === undefined || isWithheld(kept) ? undefined : kept.content;
}

function clockOr(refusal: Refusal, place: string): Outcome<never> {
  return { ok: false, refusal: refusal.place === `${place}/sealed/made` ? { ...refusal, code: "entry-clock" } : refusal };
}

/**
 * A crew's phone goes from hand to hand: a crew session may name any crew person of the company. One who has left may
 * still be named for what was made before. Office and company owner speak for themselves only.
 */
function writerOf(sealed: Sealed, place: string, { person, role, people }: Sender): Outcome<Writer> {
  const author = people.find((one) => one.id === sealed.author.person);
  const there = author !== undefined && (author.left === undefined || sealed.made <= author.left);
  const may = author?.id === person || (role === "crew" && author?.role === "crew");
  if (!there || !may) return refuse("entry-author", `${place}/sealed/author/person`, {});
  return ok(role);
}

function roleFault(kind: string, place: string, writer: Writer): Refusal | undefined {
  if (!Object.hasOwn(writers, kind)) return undefined;
  const allowed = writers[kind as keyof typeof writers];
  return allowed.includes(writer) ? undefined : refuse("entry-role", `${place}/sealed/kind`, { kind, role: writer }).refusal;
}
