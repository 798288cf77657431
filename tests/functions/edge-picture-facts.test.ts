import { readFileSync } from "node:fs";
import exifReader from "exifreader";
import sharp from "sharp";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { batchOf, type Company, type Loose, newCompany, newJob, sha256, until } from "../helpers/edge.ts";
import { imagesOf } from "../helpers/pdf.ts";
import { exifBlock, jpegWith, TAG, triple } from "../helpers/photo-bytes.ts";

/** The sample's pixels alone: it has notes of its own. */
const bare = await sharp(readFileSync(new URL("../samples/photos/camera-640.jpg", import.meta.url)))
  .jpeg()
  .toBuffer();

/** A real photo with a place, a time and an offset of its own; `second` tells one from another. */
const placed = (second: number): Uint8Array =>
  jpegWith(
    bare,
    exifBlock({
      ifd0: { [TAG.orientation]: 6 },
      exif: { [TAG.dateTimeOriginal]: `2026:05:04 08:00:${String(second).padStart(2, "0")}`, [TAG.offsetTimeOriginal]: "-04:00" },
      gps: {
        [TAG.latitudeRef]: "N",
        [TAG.latitude]: triple(41, 30, 30),
        [TAG.longitudeRef]: "W",
        [TAG.longitude]: triple(93, 36, 0),
        [TAG.gpsError]: [[8, 1]],
      },
    }),
  );

let company: Company;
let job: Awaited<ReturnType<typeof newJob>>;
let bytes: Uint8Array;
let photo: string;
let entry: string;
const path = (end: string): string => `/api/jobs/${job.job}/${end}`;
const linesOf = async (id: string): Promise<Loose[]> =>
  (await company.office.get(path("pictures"))).body.pictures.find((picture: Loose) => picture.entry === id)?.lines ?? [];
const ledger = async (): Promise<Loose[]> => (await company.office.get(path("ledger"))).body.entries;
const stored = async (second: number): Promise<{ sha: string; bytes: Uint8Array }> => {
  const file = placed(second);
  const sha = sha256(file);
  expect((await company.office.ask("PUT", `/api/photos/${sha}`, { bytes: file })).status).toBe(201);
  return { sha, bytes: file };
};
const read = (sha: string) =>
  until(
    async () => (await company.office.get(`/api/photos/${sha}`)).body,
    ({ state }) => state === "read",
  );

beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
  job = await newJob(company);
  ({ sha: photo, bytes } = await stored(1));
  const what = { item: "footing-seen", photo, bytes: bytes.length, type: "image/jpeg", taken: Date.UTC(2026, 4, 4, 12) };
  const sealed = await job.phone.entry(job.job, company.people.crew, "picture-taken", what, { made: Date.UTC(2026, 4, 4, 12) });
  entry = sealed.sealed.id;
  await company.crew.post(path("entries"), batchOf(sealed));
  await read(photo);
  await until(
    () => linesOf(entry),
    (lines) => lines.some(({ key }) => key === "photo.zone-by-tag"),
  );
});

/** Every kind of notes that a second reader finds in a file, pixels' own facts apart. */
const notesIn = (jpeg: Uint8Array): string[] => {
  const { exif, gps, xmp, iptc, mpf, photoshop, makerNotes } = exifReader.load(Buffer.from(jpeg), { expanded: true }) as Loose;
  return Object.entries({ exif, gps, xmp, iptc, mpf, photoshop, makerNotes }).flatMap(([name, value]) =>
    value === undefined ? [] : [name],
  );
};

describe("what speaks for and against a picture", () => {
  it("each line has its sentence in the language of the one who asks, and crews are not told", async () => {
    const lines = await linesOf(entry);
    expect(lines.find(({ key }) => key === "photo.zone-by-tag")).toMatchObject({
      speaks: "neither",
      sentence: "The camera's clock read 4 May 2026, 8:00 at -04:00 from UTC, by its own note.",
    });
    expect(lines.map(({ key }) => key)).toEqual(
      expect.arrayContaining(["photo.app-moment", "photo.site-not-located", "photo.no-app-place"]),
    );
    expect((await company.crew.get(path("pictures"))).status).toBe(403);
  });

  it("the office says where the site is; the camera's place is held beside it, and both stand where the customer's edition leaves them out", async () => {
    const site = { latitude: 415_080_000, longitude: -936_000_000, accuracy: 5_000, reaches: 150_000_000, how: "from the county's map" };
    expect((await company.office.post(path("site"), site)).status).toBe(201);
    // 41° 30′ 30″ is 41.508333°: 0.000333° of latitude or 37.07 m to the north
    const [line] = (await linesOf(entry)).filter(({ key }) => key.startsWith("photo.camera-place"));
    expect(line).toMatchObject({ speaks: "for", key: "photo.camera-place-at-site" });
    expect(line.figures.awayDistance / 1e6).toBeCloseTo(37.07, 1);
    const located = (await ledger()).find(({ envelope }) => envelope.kind === "site-located");
    expect(located.body.where.content.latitude).toBe(415_080_000);
    expect(JSON.stringify(located.body.what)).not.toContain("415080000");
  });
});

describe("a person's look", () => {
  it("is entered by the office in its own name, stands in the finding, and the last one counts", async () => {
    for (const says of ["cannot tell", "shows it"])
      expect((await company.office.post(path("looks"), { picture: entry, says })).status).toBe(201);
    const { findings } = (await company.office.get(`/api/jobs/${job.job}`)).body;
    expect(findings.find(({ check }: Loose) => check === "footing-seen").says.key).toBe("picture.shows");
    const looks = (await ledger()).filter(({ envelope }) => envelope.kind === "picture-looked-at");
    expect(looks.map(({ envelope }) => envelope.author.person)).toEqual([company.people.office, company.people.office]);
    expect((await linesOf(entry)).find(({ key }) => key === "photo.looked-shows").sentence).toMatch(
      /^Looked at by Kim Alder, .*: it shows it\.$/,
    );
  });

  it("sent twice under one id it is one entry; of a picture that is not there, or by the crew, it is refused", async () => {
    const twice = { picture: entry, says: "shows it", id: "look-sent-twice" };
    const answers = [await company.office.post(path("looks"), twice), await company.office.post(path("looks"), twice)];
    expect(answers.map(({ body }) => body.number)).toEqual([answers[0]?.body.number, answers[0]?.body.number]);
    expect(await company.office.post(path("looks"), { ...twice, id: "another", picture: "nothing" })).toMatchObject({
      status: 422,
      body: { code: "entry-unknown-entry", place: "picture" },
    });
    expect((await company.crew.post(path("looks"), twice)).status).toBe(403);
  });
});

describe("received otherwise", () => {
  it("is filed with from whom, how and when; the name stands where editions leave it out; it counts and proves no order", async () => {
    const { sha } = await stored(2);
    await read(sha);
    const what = { item: "footing-seen", photo: sha, from: "Pat Lindqvist", how: "text message", when: "4 May, about noon" };
    const answer = await company.office.post(path("received"), what);
    expect(answer.status).toBe(201);
    const filed = (await ledger()).find(({ envelope }) => envelope.id === answer.body.entry);
    expect(filed.body.what.content).toMatchObject({ photo: sha, how: "text message", when: "4 May, about noon" });
    expect(filed.body.who.content).toEqual({ name: "Pat Lindqvist" });
    const { findings } = (await company.office.get(`/api/jobs/${job.job}`)).body;
    expect(findings.find(({ check }: Loose) => check === "footing-seen").entries).toContain(answer.body.entry);
    expect((await linesOf(answer.body.entry)).map(({ key }) => key)).toContain("photo.received-otherwise");
  });

  it("is refused without a stored photo, for an item that is not there, and from the crew", async () => {
    const what = { item: "footing-seen", photo: "f".repeat(64), from: "Pat", how: "text", when: "noon" };
    expect(await company.office.post(path("received"), what)).toMatchObject({ status: 404, body: { code: "photo-unknown" } });
    expect(await company.office.post(path("received"), { ...what, photo, item: "nothing-here" })).toMatchObject({
      body: { code: "entry-unknown-item" },
    });
    expect((await company.crew.post(path("received"), { ...what, photo })).status).toBe(403);
  });
});

describe("privacy", () => {
  it("the second reader does find notes and place in the original, so that finding none means something", () => {
    expect(notesIn(bytes)).toEqual(expect.arrayContaining(["exif", "gps"]));
  });

  it.each(["screen", "print"])("the rendition for %s carries no notes and no place, for every role", async (name) => {
    for (const client of [company.crew, company.office, company.owner]) {
      const answer = await client.get(`/api/photos/${photo}/${name}`);
      expect(answer.status).toBe(200);
      expect(notesIn(answer.bytes)).toEqual([]);
    }
  });

  it("originals are for office and company owner alone", async () => {
    const statuses = await Promise.all(
      [company.crew, company.office, company.owner].map(async (one) => (await one.get(`/api/photos/${photo}/original`)).status),
    );
    expect(statuses).toEqual([403, 200, 200]);
  });

  it.each(["customer", "company"])(
    "no image in the record for the %s carries notes; the customer's has no position anywhere",
    async (edition) => {
      const issued = (await company.office.post(path("records"), { edition })).body;
      const pdf = (await company.office.get(issued.pdf)).bytes;
      const jpegs = (await imagesOf(pdf)).filter(({ filter }) => filter.includes("DCTDecode"));
      expect(jpegs.length).toBeGreaterThanOrEqual(2);
      expect(jpegs.flatMap((image) => notesIn(image.bytes))).toEqual([]);
      expect(Buffer.from(pdf).includes("Exif\0\0")).toBe(false);
      const attached = JSON.stringify((await company.office.get(`/api/records/${issued.record}/ledger`)).body);
      const model = JSON.stringify((await company.office.get(`/api/records/${issued.record}/model`)).body);
      // the latitude of the site and of the photo, in the ledger's integers
      const positions = ["415080000", "415083333", "latitude"].map((text) => attached.includes(text) || model.includes(text));
      expect(positions).toEqual(edition === "customer" ? [false, false, false] : [true, true, true]);
    },
  );
});

describe("a part that is blurred", () => {
  const quarter = { x: 0, y: 0, width: 500_000, height: 500_000 };
  const pixels = async (jpeg: Uint8Array, left: number, top: number) =>
    sharp(jpeg).extract({ left, top, width: 100, height: 100 }).greyscale().raw().toBuffer();
  /** Mean square of the differences between neighbours: what can be read has edges. */
  const edges = (grey: Buffer): number => {
    let sum = 0;
    for (let i = 1; i < grey.length; i += 1) if (i % 100 !== 0) sum += (Number(grey[i]) - Number(grey[i - 1])) ** 2;
    return sum / grey.length;
  };

  it("is unrecognisable on screen and paper, the rest and the original are as they were, and every ledger says so", async () => {
    const before = (await company.office.get(`/api/photos/${photo}/screen`)).bytes;
    const answer = await company.office.post(`/api/photos/${photo}/blurred`, { regions: [quarter], reason: "a neighbour's face" });
    expect(answer).toMatchObject({ status: 201, body: { sha256: photo, jobs: [job.job] } });
    const { parts } = answer.body;
    for (const client of [company.crew, company.office]) {
      const after = await client.get(`/api/photos/${photo}/screen?parts=${parts}`);
      expect(notesIn(after.bytes)).toEqual([]);
      expect(edges(await pixels(after.bytes, 60, 60))).toBeLessThan(edges(await pixels(before, 60, 60)) / 20);
      const size = await sharp(before).metadata();
      const [x, y] = [size.width - 120, size.height - 120];
      const [old, now] = [await pixels(before, x, y), await pixels(after.bytes, x, y)];
      expect(old.reduce((sum, value, i) => sum + Math.abs(value - Number(now[i])), 0) / old.length).toBeLessThan(3);
    }
    expect(sha256((await company.office.get(`/api/photos/${photo}/original`)).bytes)).toBe(photo);
    const fact = (await ledger()).find(({ envelope }) => envelope.kind === "region-blurred");
    expect(fact.body.what.content).toEqual({ photo, rendition: parts, regions: [quarter], reason: "a neighbour's face" });
    expect(fact.envelope.author.person).toBe(company.people.office);
    expect((await company.crew.get(`/api/jobs/${job.job}`)).body.photos[photo].blurred).toBe(parts);
    expect((await linesOf(entry)).map(({ key }) => key)).toContain("photo.blurred-in-part");
  });

  it("the address without its parts gives the blurred one too, and is not kept by a browser", async () => {
    const { blurred } = (await company.office.get(`/api/jobs/${job.job}`)).body.photos[photo];
    const [bare, named] = [
      await company.crew.get(`/api/photos/${photo}/screen`),
      await company.crew.get(`/api/photos/${photo}/screen?parts=${blurred}`),
    ];
    expect(sha256(bare.bytes)).toBe(sha256(named.bytes));
    expect([bare.headers.get("cache-control"), named.headers.get("cache-control")]).toEqual([
      "private, no-store",
      expect.stringContaining("immutable"),
    ]);
  });

  it("the record prints the blurred one and says so", async () => {
    const issued = (await company.office.post(path("records"), { edition: "customer" })).body;
    const model = JSON.stringify((await company.office.get(`/api/records/${issued.record}/model`)).body);
    expect(model).toContain("a part of it is blurred");
    const { blurred } = (await company.office.get(`/api/jobs/${job.job}`)).body.photos[photo];
    expect(model).toContain(`print-${blurred}.jpg`);
    const print = (await company.office.get(`/api/photos/${photo}/print?parts=${blurred}`)).bytes;
    const images = await imagesOf((await company.office.get(issued.pdf)).bytes);
    expect(images.some((image) => sha256(image.bytes) === sha256(print))).toBe(true);
  });

  it("asked twice it is one fact; outside the picture, of nothing, or by the crew it is refused", async () => {
    const at = `/api/photos/${photo}/blurred`;
    const facts = async () => (await ledger()).filter(({ envelope }) => envelope.kind === "region-blurred").length;
    const before = await facts();
    expect((await company.office.post(at, { regions: [quarter], reason: "again" })).status).toBe(201);
    expect(await facts()).toBe(before);
    const outside = { ...quarter, x: 600_000 };
    expect(await company.office.post(at, { regions: [outside], reason: "r" })).toMatchObject({
      body: { code: "request-shape", place: "regions/0" },
    });
    expect((await company.office.post(at, { regions: [], reason: "r" })).body.code).toBe("request-shape");
    expect((await company.crew.post(at, { regions: [quarter], reason: "r" })).status).toBe(403);
    expect((await company.office.post(`/api/photos/${"0".repeat(64)}/blurred`, { regions: [quarter], reason: "r" })).status).toBe(404);
  });
});
