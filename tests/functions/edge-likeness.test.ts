import { readFileSync } from "node:fs";
import sharp from "sharp";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { batchOf, type Company, type Loose, newCompany, newJob, sha256, until } from "../helpers/edge.ts";
import { photographs } from "../helpers/photographs.ts";

const camera = readFileSync(new URL("../samples/photos/camera-640.jpg", import.meta.url));
const starfish = photographs.find(({ name }) => name === "starfish")?.file as string;
const allium = photographs.find(({ name }) => name === "allium")?.file as string;

type Job = Awaited<ReturnType<typeof newJob>>;
const AT = Date.UTC(2026, 4, 4, 12);

/** The company's phone takes a picture: its bytes and its entry; waits until it is read and compared. */
async function taken(company: Company, { job, phone }: Job, bytes: Uint8Array, at = AT): Promise<string> {
  const photo = sha256(bytes);
  const entry = await phone.entry(job, company.people.crew, "picture-taken", {
    item: "footing-seen",
    photo,
    bytes: bytes.length,
    type: "image/jpeg",
    taken: at,
  });
  const answer = await company.crew.post(`/api/jobs/${job}/entries`, batchOf(entry));
  expect(answer.body.answers?.[0]).toMatchObject({ outcome: "taken" });
  expect([200, 201]).toContain((await company.crew.ask("PUT", `/api/photos/${photo}`, { bytes })).status);
  const read = await until(
    async () => (await company.crew.get(`/api/photos/${photo}`)).body,
    ({ state }) => state !== "stored",
    60_000,
  );
  expect(read.state).toBe("read");
  return photo;
}

const listOf = async (company: Company, job?: string): Promise<readonly Loose[]> =>
  (await company.office.get(job === undefined ? "/api/seen-before" : `/api/jobs/${job}/seen-before`)).body.seenBefore;
const pairOf = (list: readonly Loose[], photo: string, before: string): Loose =>
  list.find((one) => one.photo.sha256 === photo && one.before.sha256 === before);
const listed = (company: Company, photo: string, before: string): Promise<Loose> =>
  until(
    async () => pairOf(await listOf(company), photo, before),
    (pair) => pair !== undefined,
  );
/** The same file with some bytes after its end, as a phone's trailer stands there (S13). */
const withTrailer = (bytes: Uint8Array, text: string): Uint8Array => new Uint8Array([...bytes, ...new TextEncoder().encode(text)]);

let ours: Company;
let theirs: Company;
let one: Job;
let other: Job;
beforeAll(async () => {
  ours = await newCompany(inject("edge"), inject("operatorKey"));
  theirs = await newCompany(inject("edge"), inject("operatorKey"));
  one = await newJob(ours);
  other = await newJob(ours);
});

describe("photos seen before", () => {
  it("finds the same pixels in another file, in another job, when the second arrives (D10)", async () => {
    const first = await taken(ours, one, camera);
    const second = await taken(ours, other, withTrailer(camera, "another file"), AT + 86_400_000);
    expect(second).not.toBe(first);
    const pair = await listed(ours, second, first);
    expect(pair).toMatchObject({ how: "pixels", distance: 0, turn: 1, weight: "alarm" });
    expect(pair.photo.usedIn).toEqual([{ job: other.job, made: AT + 86_400_000 }]);
    expect(pair.before.usedIn).toEqual([{ job: one.job, made: AT }]);
  });

  it("finds it turned, resized and recompressed, names the turn and gives both pictures (D04)", async () => {
    const first = await taken(ours, one, new Uint8Array(readFileSync(starfish)));
    const again = await sharp(starfish).rotate(90).resize(500).jpeg({ quality: 50 }).toBuffer();
    const second = await taken(ours, other, new Uint8Array(again), AT + 86_400_000);
    const pair = await listed(ours, second, first);
    // Turned right by 90° in its pixels: turned left (the tag's 8) it lies as the earlier one.
    expect(pair).toMatchObject({ how: "likeness", turn: 8, weight: "alarm" });
    expect(pair.distance).toBeLessThanOrEqual(6);
    for (const photo of [first, second]) expect((await ours.office.get(`/api/photos/${photo}/screen`)).status).toBe(200);
    expect(pairOf(await listOf(ours, one.job), second, first)).toEqual(pair);
    expect(pairOf(await listOf(ours, other.job), second, first)).toEqual(pair);
  });

  it("takes two frames of one burst in one job for a hint, the same a day on for an alarm (D08)", async () => {
    const frames = await Promise.all([90, 80, 70].map((quality) => sharp(allium).jpeg({ quality }).toBuffer()));
    const [before = "", after = "", tomorrow = ""] = [
      await taken(ours, one, new Uint8Array(frames[0] as Buffer), AT + 600_000),
      await taken(ours, one, new Uint8Array(frames[1] as Buffer), AT + 601_000),
      await taken(ours, one, new Uint8Array(frames[2] as Buffer), AT + 86_400_000),
    ];
    expect(await listed(ours, after, before)).toMatchObject({ weight: "hint" });
    expect(await listed(ours, tomorrow, before)).toMatchObject({ weight: "alarm" });
  });

  it("finds one photo that two jobs name", async () => {
    const bytes = withTrailer(camera, "named twice");
    const photo = await taken(ours, one, bytes);
    expect(pairOf(await listOf(ours), photo, photo)).toBeUndefined();
    await taken(ours, other, bytes, AT + 86_400_000);
    const pair = await listed(ours, photo, photo);
    expect(pair).toMatchObject({ how: "bytes", distance: 0, turn: 1, weight: "alarm" });
    expect(pair.photo.usedIn.map((use: Loose) => use.job)).toEqual([one.job, other.job]);
  });

  it("abstains from black pictures (D01)", async () => {
    const black = async (quality: number, edge: number) =>
      new Uint8Array(
        await sharp({ create: { width: 640, height: edge, channels: 3, background: "#020202" } })
          .jpeg({ quality })
          .toBuffer(),
      );
    const first = await taken(ours, one, await black(90, 480));
    const second = await taken(ours, other, await black(60, 481), AT + 86_400_000);
    const { facts } = (await ours.crew.get(`/api/photos/${second}`)).body;
    expect(facts.likeness).toMatchObject({ hashes: [], abstains: "even" });
    expect(pairOf(await listOf(ours), second, first)).toBeUndefined();
  });

  it("never looks across companies", async () => {
    const job = await newJob(theirs);
    await taken(theirs, job, camera);
    await taken(theirs, job, withTrailer(camera, "of another company"), AT + 1_000);
    const list = await until(
      () => listOf(theirs),
      (found) => found.length > 0,
    );
    // Their two, and none of ours although ours has the same pixels.
    expect(list).toHaveLength(1);
    expect(list[0]).toMatchObject({ how: "pixels", weight: "hint" });
    const named = (await listOf(ours)).flatMap(({ photo, before }) => [...photo.usedIn, ...before.usedIn].map((use: Loose) => use.job));
    expect(named).not.toContain(job.job);
    expect((await theirs.office.get(`/api/jobs/${one.job}/seen-before`)).status).toBe(404);
  });

  it("is for the office, not for the crew", async () => {
    expect((await ours.crew.get("/api/seen-before")).status).toBe(403);
    expect((await ours.crew.get(`/api/jobs/${one.job}/seen-before`)).status).toBe(403);
  });
});
