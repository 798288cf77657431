import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect } from "vitest";
import { type Client, type Loose, type Reply, sha256 } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";
import type { Acknowledged } from "./phone-that-keeps.ts";
import { limited, pause } from "./waiting.ts";

const get = async (client: Client, path: string): Promise<Reply> => limited(path, client.get(path));

const photoOf = (body: Loose): string => body.what.content.photo;
const named = ({ entries }: Acknowledged, job: string): readonly string[] => {
  const pictures = entries.filter((one) => one.job === job && one.entry.sealed.kind === "picture-taken");
  return [...new Set(pictures.map(({ entry }) => photoOf(entry.body)))].sort();
};
const told = (ledger: Loose): readonly string[] =>
  ledger.entries
    .filter((one: Loose) => one.envelope.kind === "picture-read")
    .map((one: Loose) => photoOf(one.body))
    .sort();

/** Until every photo is read or found unreadable, and every job that names it has been told. */
export async function settled(client: Client, jobs: readonly string[], acknowledged: Acknowledged, milliseconds: number): Promise<void> {
  const end = Date.now() + milliseconds;
  for (;;) {
    const owed: string[] = [];
    for (const sha of acknowledged.photos.keys()) {
      const state = (await get(client, `/api/photos/${sha}`)).body?.state;
      if (state !== "read" && state !== "unreadable") owed.push(`${sha.slice(0, 8)} is ${state}`);
    }
    for (const job of owed.length === 0 ? jobs : []) {
      const count = named(acknowledged, job).length - told((await get(client, `/api/jobs/${job}/ledger`)).body).length;
      if (count > 0) owed.push(`a job is to be told of ${count}`);
    }
    if (owed.length === 0) return;
    if (Date.now() > end) throw new Error(`after ${milliseconds / 1000} s still: ${owed.join(", ")}`);
    await pause(250);
  }
}

/** Compares all that was acknowledged with what is there, and gives the heads of the jobs. Fails with the first difference. */
export async function compare(
  office: Client,
  jobs: readonly string[],
  { entries, photos, records }: Acknowledged,
): Promise<Readonly<Record<string, unknown>>> {
  const heads: Record<string, unknown> = {};
  for (const job of jobs) {
    const { bytes, body } = await get(office, `/api/jobs/${job}/ledger`);
    expect(verifyLedger(new TextDecoder().decode(bytes)), job).toMatchObject({ ok: true, faults: [], withheld: [] });
    const kept = entries.filter((one) => one.job === job);
    const expected = kept.map(({ number, entry }) => ({ number, id: entry.sealed.id, parts: entry.sealed.parts, body: entry.body }));
    const found = kept.map(({ number }) => {
      const { envelope, body: content } = body.entries[number - 1] ?? { envelope: {} };
      return { number: envelope.number, id: envelope.id, parts: envelope.parts, body: content };
    });
    expect(found).toEqual(expected);
    // the verifier found no id twice: each of these is there once
    expect(new Set(kept.map(({ number }) => number)).size).toBe(kept.length);
    expect(told(body)).toEqual(named({ entries, photos, records }, job));
    expect((await get(office, `/api/rebuild/${job}`)).body).toEqual({ job, same: true, differences: [] });
    heads[job] = body.head;
  }
  for (const [sha, original] of photos) {
    const back = await get(office, `/api/photos/${sha}/original`);
    expect([back.status, back.bytes.length, sha256(back.bytes)]).toEqual([200, original.length, sha]);
    const { state } = (await get(office, `/api/photos/${sha}`)).body;
    const screen = await get(office, `/api/photos/${sha}/screen`);
    expect([state, screen.status]).toEqual(state === "read" ? ["read", 200] : ["unreadable", 422]);
  }
  for (const { job, record, version, sha256: digest, bytes } of records) {
    const paper = await get(office, `/api/records/${record}/pdf`);
    expect([paper.status, paper.bytes.length, sha256(paper.bytes)]).toEqual([200, bytes, digest]);
    const attached = await get(office, `/api/records/${record}/ledger`);
    expect(verifyLedger(new TextDecoder().decode(attached.bytes)).faults).toEqual([]);
    const model = (await get(office, `/api/records/${record}/model`)).body;
    expect([model.title.version, model.proof.head]).toEqual([version, attached.body.head.hash]);
    const listed = (await get(office, `/api/jobs/${job}/records`)).body.records as readonly Loose[];
    expect(listed.filter((one) => one.record === record || one.version === version)).toHaveLength(1);
  }
  return heads;
}

const OBJECT = /originals\/([0-9a-f]{64})\._S3rver_object$/;

/** Every original on disk, acknowledged or not, is whole: its bytes have the hash that it is named by. */
export async function originalsOnDisk(
  directory: string,
): Promise<{ readonly whole: number; readonly half: readonly string[]; readonly parts: number }> {
  const files = (await readdir(directory, { recursive: true, withFileTypes: true })).filter((one) => one.isFile());
  const half: string[] = [];
  let whole = 0;
  for (const file of files) {
    const path = join(file.parentPath, file.name);
    const sha = OBJECT.exec(path)?.[1];
    if (sha === undefined) continue;
    if (sha256(await readFile(path)) === sha) whole += 1;
    else half.push(sha);
  }
  return { whole, half, parts: files.filter(({ name }) => name.includes(".part-")).length };
}
