import { isDeepStrictEqual } from "node:util";
import { verify } from "#core/ledger/index.ts";
import { digest } from "#infra/node-digest.ts";
import { rowsIn } from "../../helpers/database.ts";
import { type Client, type Loose, type Reply, sha256 } from "../../helpers/edge.ts";
import { verifyLedger } from "../../helpers/verifier.ts";
import type { KeptRecord } from "../phone-that-keeps.ts";
import { limited, pause } from "../waiting.ts";
import type { Told } from "./phone.ts";

/** Whatever is owed has been done within this, once nothing breaks any more. */
export const SETTLE_LIMIT_MS = 60_000;

const HURRY_EVERY_MS = 6_500;

const get = (client: Client, path: string): Promise<Reply> => limited(path, client.get(path), 30_000);

interface OwedRow {
  readonly kind: string;
  readonly ref: string;
  readonly tries: number;
}

/** Waits until nothing is owed any more; what still is, after the limit. */
export async function settled(stackDirectory: string, hurry: () => Promise<void>): Promise<readonly string[]> {
  const end = Date.now() + SETTLE_LIMIT_MS;
  let hurried = 0;
  for (;;) {
    const rows = rowsIn<OwedRow>(stackDirectory, "owed", "SELECT kind, ref, tries FROM owed ORDER BY kind, ref");
    if (rows.length === 0) return [];
    if (Date.now() > end)
      return rows.map(({ kind, ref, tries }) => `still owed after ${SETTLE_LIMIT_MS / 1000} s: ${kind} ${ref}, ${tries} tries`);
    // each time is a try, and what was tried too often is laid aside
    if (Date.now() - hurried > HURRY_EVERY_MS) {
      await hurry();
      hurried = Date.now();
    }
    await pause(200);
  }
}

/** What is wrong with a job's ledger: its chain, by the core and by a second reader, and what its phones were told of it. */
export async function jobFaults(office: Client, job: string, told: Told): Promise<readonly string[]> {
  const { status, bytes, body } = await get(office, `/api/jobs/${job}/ledger`);
  if (status !== 200) return [`job ${job} answers ${status}`];
  const faults: string[] = [];
  const { ok, faults: found } = await verify(digest, body);
  if (!ok) faults.push(`job ${job}: ${found.map(({ code, place }) => `${code} at ${place}`).join(", ")}`);
  const second = verifyLedger(new TextDecoder().decode(bytes));
  if (!second.ok) faults.push(`job ${job}: ${second.faults.join(", ")}`);
  const byId = new Map<string, Loose[]>();
  for (const one of body.entries) byId.set(one.envelope.id, [...(byId.get(one.envelope.id) ?? []), one]);
  for (const { round, number, entry } of told.entries.filter((one) => one.job === job)) {
    const there = byId.get(entry.sealed.id) ?? [];
    const [one] = there;
    const isSame =
      one?.envelope.number === number &&
      isDeepStrictEqual(one.envelope.parts, entry.sealed.parts) &&
      isDeepStrictEqual(one.body, entry.body);
    if (there.length !== 1) faults.push(`entry ${entry.sealed.id} of round ${round} is there ${there.length} times`);
    else if (!isSame) faults.push(`entry ${entry.sealed.id} of round ${round} is another than was acknowledged`);
  }
  return [...faults, ...photosTold(job, body.entries, told)];
}

/** Every photo that a job names and whose bytes were acknowledged: the job was told of it once. */
function photosTold(job: string, entries: readonly Loose[], told: Told): readonly string[] {
  const photosOf = (kind: string): readonly string[] =>
    entries.filter(({ envelope }) => envelope.kind === kind).map(({ body }) => body.what.content.photo as string);
  const reads = photosOf("picture-read");
  return [...new Set(photosOf("picture-taken"))].flatMap((photo) => {
    const count = reads.filter((one) => one === photo).length;
    return told.photos.has(photo) && count !== 1 ? [`job ${job} was told ${count} times of photo ${photo.slice(0, 8)}`] : [];
  });
}

/** What is wrong with an acknowledged photo; `read` counts what was read of those that are whole. */
export async function photoFaults(office: Client, sha: string, told: Told): Promise<readonly string[]> {
  const { round, bytes, damaged } = told.photos.get(sha) ?? { round: 0, bytes: 0, damaged: false };
  const name = `photo ${sha.slice(0, 8)} of round ${round}`;
  const original = await get(office, `/api/photos/${sha}/original`);
  if (original.status !== 200) return [`${name}: its original answers ${original.status}`];
  if (original.bytes.length !== bytes || sha256(original.bytes) !== sha) return [`${name}: its bytes are others`];
  const { state } = (await get(office, `/api/photos/${sha}`)).body;
  if (state !== "read" && state !== "unreadable") return [`${name} ends ${state}`];
  if (state === "unreadable") return damaged ? [] : [`${name} is whole and is called unreadable`];
  const screen = await get(office, `/api/photos/${sha}/screen`);
  return screen.status === 200 ? [] : [`${name} is read, and its picture answers ${screen.status}`];
}

/** What is wrong with an acknowledged record. */
export async function recordFaults(office: Client, kept: KeptRecord): Promise<readonly string[]> {
  const paper = await get(office, `/api/records/${kept.record}/pdf`);
  if (paper.status !== 200 || paper.bytes.length !== kept.bytes || sha256(paper.bytes) !== kept.sha256)
    return [`record ${kept.record} is another than was acknowledged (${paper.status})`];
  const listed = (await get(office, `/api/jobs/${kept.job}/records`)).body.records as readonly Loose[];
  const count = listed.filter(({ record, version }) => record === kept.record || version === kept.version).length;
  return count === 1 ? [] : [`record ${kept.record} is listed ${count} times`];
}

/** On the disk, past the edge: how often each acknowledged entry's row is there. */
export function rowFaults(stackDirectory: string, told: Told): readonly string[] {
  const rows = rowsIn<{ id: string; count: number }>(stackDirectory, "entry", "SELECT id, count(*) AS count FROM entry GROUP BY job, id");
  const counts = new Map(rows.map(({ id, count }) => [id, count]));
  return told.entries.flatMap(({ entry: { sealed } }) => {
    const count = counts.get(sealed.id) ?? 0;
    return count === 1 ? [] : [`entry ${sealed.id} has ${count} rows on the disk`];
  });
}
