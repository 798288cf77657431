import { PDFDocument } from "@cantoo/pdf-lib";
import { unzipSync, type Zippable, zipSync } from "fflate";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { jobLedgerOf, jobState } from "#core/job/index.ts";
import { rowsIn } from "../helpers/database.ts";
import { batchOf, type Company, type Loose, newCompany, newJob, sha256, until } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

let from: Company;
let job: string;
let photo: Uint8Array;
let archive: Uint8Array;
let paper: Uint8Array;

const file = (bytes: Uint8Array): Uint8Array => Uint8Array.from(bytes);
const into = (company: Company, bytes: Uint8Array) => company.office.ask("POST", "/api/archives", { bytes: file(bytes) });
const another = () => newCompany(inject("edge"), inject("operatorKey"));
/** Everything that a company has in a table. */
const count = (company: Company, table: string): number =>
  rowsIn(inject("stackDirectory"), table, `SELECT * FROM ${table} WHERE company = ?`, company.company).length;
const tables = ["entry", "job", "photo", "photo_use", "record", "version", "person", "own_number", "owed", "blurred", "paper"];
const counts = (company: Company) => tables.map((table) => count(company, table));

beforeAll(async () => {
  from = await another();
  const opened = await newJob(from);
  job = opened.job;
  // what looks like the end of a file in an archive stands in the middle of this one
  const marks = [0x50, 0x4b, 0x07, 0x08, 0x50, 0x4b, 0x03, 0x04, 0x50, 0x4b, 0x01, 0x02];
  photo = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, ...marks, ...new Uint8Array(3_000_000).map((_, i) => (i * 31) % 251), ...marks]);
  const sha = sha256(photo);
  expect((await from.crew.ask("PUT", `/api/photos/${sha}`, { bytes: file(photo) })).status).toBe(201);
  const { phone } = opened;
  const pictures = await Promise.all(
    [sha, "ab".repeat(32)].map((named) =>
      phone.entry(job, from.people.crew, "picture-taken", { item: "footing-seen", photo: named, bytes: photo.length, type: "image/jpeg" }),
    ),
  );
  const note = await phone.entry(job, from.people.crew, "note-for-record", { text: "Gravel came wet" });
  const sent = await from.crew.post(`/api/jobs/${job}/entries`, batchOf(...pictures, note));
  expect(sent.body.answers.map((one: Loose) => one.outcome)).toEqual(["taken", "taken", "taken"]);
  // an empty page, as the back of a scan
  const document = await PDFDocument.create();
  document.addPage([612, 792]);
  paper = await document.save();
  expect((await from.office.ask("PUT", `/api/papers/${sha256(paper)}`, { bytes: file(paper) })).status).toBe(201);
  const named = { title: "Permit", paper: "permit", pdf: sha256(paper) };
  expect((await from.office.post(`/api/jobs/${job}/decisions`, { kind: "paper-added", what: named })).status).toBe(201);
  expect((await from.office.post(`/api/jobs/${job}/particulars`, { invoice: "I-1" })).status).toBe(201);
  expect((await from.office.post(`/api/jobs/${job}/records`, { edition: "customer" })).status).toBe(201);
  // the machine says of the photo that it is no picture; only then does the ledger stand still
  await until(
    async () => (await from.office.get(`/api/jobs/${job}/ledger`)).body.entries.map((e: Loose) => e.envelope.kind),
    (kinds: string[]) => kinds.includes("picture-read"),
  );
  archive = (await from.office.get(`/api/jobs/${job}/archive`)).bytes;
}, 120_000);

describe("a job whole as an archive", () => {
  it("is a plain ZIP that another program opens: list, ledger, photo, record", async () => {
    const files = unzipSync(archive);
    const names = Object.keys(files);
    expect(names.slice(0, 3)).toEqual([listIn(files), "ledger.json", `photos/${sha256(photo)}`]);
    expect(listIn(files)).toBe(`list-${sha256(files[listIn(files)] ?? new Uint8Array())}.json`);
    expect(names.filter((name) => /^records\/[^/]+\/(pdf|model\.json|ledger\.json)$/.test(name))).toHaveLength(3);
    expect(sha256(files[`photos/${sha256(photo)}`] ?? new Uint8Array())).toBe(sha256(photo));
    expect(verifyLedger(new TextDecoder().decode(files["ledger.json"])).faults).toEqual([]);
    const list = JSON.parse(new TextDecoder().decode(files[listIn(files)]));
    for (const { name, bytes, sha256: of } of [
      list.ledger,
      ...list.photos.map((one: Loose) => one.file),
      ...list.papers,
      ...list.records.flatMap((one: Loose) => one.files),
    ]) {
      expect([name, files[name]?.length, sha256(files[name] ?? new Uint8Array())]).toEqual([name, bytes, of]);
    }
  });

  it("is read back elsewhere entry for entry, with its numbers, times of receipt, photo and record", async () => {
    const to = await another();
    const read = await into(to, archive);
    const before = (await from.office.get(`/api/jobs/${job}/ledger`)).body;
    expect(read).toMatchObject({
      status: 201,
      body: { job, outcome: "read", entries: before.entries.length, photos: 1, without: 1, records: 1 },
    });
    const ledger = await to.office.get(`/api/jobs/${job}/ledger`);
    expect(ledger.body).toEqual(before);
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).faults).toEqual([]);
    expect((await to.office.get(`/api/papers/${sha256(paper)}`)).bytes).toEqual(paper);
    const original = await to.office.get(`/api/photos/${sha256(photo)}/original`);
    expect(sha256(original.bytes)).toBe(sha256(photo));
    const [theirs] = (await from.office.get(`/api/jobs/${job}/records`)).body.records;
    const [ours] = (await to.office.get(`/api/jobs/${job}/records`)).body.records;
    expect(ours).toEqual(theirs);
    expect(sha256((await to.office.get(ours.pdf)).bytes)).toBe(ours.sha256);
    const findings = async ({ office }: Company) => (await office.get(`/api/jobs/${job}`)).body.findings;
    expect(await findings(to)).toEqual(await findings(from));
    // who entered something there is named here, and cannot sign in
    const people = (await to.office.get("/api/people")).body.people;
    expect(people.find(({ person }: Loose) => person === from.people.crew)).toMatchObject({ name: "Sam Birch", left: expect.any(Number) });
    // what came along serves that job alone
    expect((await to.office.get("/api/company")).body.sheets).toEqual([]);
    const again = counts(to);
    expect(await into(to, archive)).toMatchObject({ status: 200, body: { outcome: "already there" } });
    expect(counts(to)).toEqual(again);
  });

  it("goes on where it was read in: the office enters, and the chain holds", async () => {
    const to = await another();
    await into(to, archive);
    expect((await to.office.post(`/api/jobs/${job}/particulars`, { order: "PO 12" })).status).toBe(201);
    const ledger = await to.office.get(`/api/jobs/${job}/ledger`);
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).faults).toEqual([]);
    expect(jobState(jobLedgerOf(ledger.body)).opened).toMatchObject({ order: "PO 12", invoice: "I-1" });
    expect(await into(to, archive)).toMatchObject({ status: 409, body: { code: "archive-job-differs" } });
  });

  it("may come without the photos' bytes, and says how many", async () => {
    const bare = (await from.office.get(`/api/jobs/${job}/archive?photos=none`)).bytes;
    expect(bare.length).toBeLessThan(archive.length - photo.length + 1000);
    const to = await another();
    expect(await into(to, bare)).toMatchObject({ status: 201, body: { photos: 0, without: 2, records: 1 } });
    expect(count(to, "photo")).toBe(0);
    // the bytes may follow later
    expect((await to.crew.ask("PUT", `/api/photos/${sha256(photo)}`, { bytes: file(photo) })).status).toBe(201);
    expect(Object.keys((await to.office.get(`/api/jobs/${job}`)).body.photos)).toEqual([sha256(photo)]);
  });
});

describe("what does not verify", () => {
  let to: Company;
  let before: readonly number[];
  beforeAll(async () => {
    to = await another();
    before = counts(to);
  });
  const refused = async (bytes: Uint8Array) => {
    const answer = await into(to, bytes);
    expect(answer.status, JSON.stringify(answer.body)).toBe(422);
    expect(counts(to)).toEqual(before);
    return answer.body;
  };
  const changedAt = (at: number): Uint8Array => {
    const bytes = Uint8Array.from(archive);
    bytes[at] = (bytes[at] ?? 0) ^ 1;
    return bytes;
  };
  const places = (text: string): number => Buffer.from(archive).indexOf(text);

  it("one changed byte in the ledger, in a photo, in a record: the part is named, and nothing is kept", async () => {
    expect(await refused(changedAt(places("Gravel came wet")))).toMatchObject({ code: "archive-part-differs", place: "ledger.json" });
    const inPhoto = Buffer.from(archive).indexOf(Buffer.from(photo.subarray(0, 40))) + 1_000_000;
    expect(await refused(changedAt(inPhoto))).toMatchObject({ code: "archive-part-differs", place: `photos/${sha256(photo)}` });
    expect(await refused(changedAt(Buffer.from(archive).indexOf("%PDF-") + 100))).toMatchObject({ code: "archive-part-differs" });
  });

  it("a ledger that was changed together with the list does not chain", async () => {
    const files = unzipSync(archive);
    const ledger = new TextEncoder().encode(new TextDecoder().decode(files["ledger.json"]).replace("Gravel came wet", "Gravel came dry"));
    const list = JSON.parse(new TextDecoder().decode(files[listIn(files)]));
    list.ledger = { name: "ledger.json", bytes: ledger.length, sha256: sha256(ledger) };
    expect(
      await refused(packed({ ...files, [listIn(files)]: new TextEncoder().encode(JSON.stringify(list)), "ledger.json": ledger })),
    ).toMatchObject({
      code: "ledger-part-digest",
      place: expect.stringMatching(/^ledger\.json\/entries\/\d+\/body\/what/),
    });
  });

  it("cut off anywhere, a part missing, one too many, or no archive at all", async () => {
    for (const share of [0.001, 0.3, 0.7, 0.97]) await refused(archive.subarray(0, Math.floor(archive.length * share)));
    const files = unzipSync(archive);
    const { [`photos/${sha256(photo)}`]: _, ...without } = files;
    expect(await refused(packed(without))).toMatchObject({ code: "archive-part-unexpected" });
    expect(await refused(packed({ ...files, "more.txt": new Uint8Array([1]) }))).toMatchObject({
      code: "archive-part-unexpected",
      place: "more.txt",
    });
    expect(await refused(new TextEncoder().encode("no archive"))).toMatchObject({ code: "archive-unreadable" });
    expect(await refused(new Uint8Array(0))).toMatchObject({ code: "archive-unreadable" });
    // packed anew by another program: its order of sizes is not ours, and that is said
    expect(await refused(zipSync(files as Zippable))).toMatchObject({ code: "archive-unreadable" });
  });

  it("eighty single changed bytes: each is refused or makes no difference to what is read", async () => {
    const bare = (await from.office.get(`/api/jobs/${job}/archive?photos=none`)).bytes;
    let state = 7;
    const places = Array.from({ length: 80 }, () => {
      state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
      return state % bare.length;
    });
    let taken = 0;
    for (const at of places) {
      const bytes = Uint8Array.from(bare);
      bytes[at] = (bytes[at] ?? 0) ^ 4;
      const answer = await into(to, bytes);
      if (answer.status === 422) continue;
      taken += 1;
      // a time of the ZIP itself, or its table at the end: nothing is read from there, and what was read is the same
      expect(answer.status).toBe(201);
      expect((await to.office.get(`/api/jobs/${job}/ledger`)).body).toEqual((await from.office.get(`/api/jobs/${job}/ledger`)).body);
      expect((await to.office.get(`/api/jobs/${job}/records`)).body).toEqual((await from.office.get(`/api/jobs/${job}/records`)).body);
      to = await another();
    }
    expect(taken).toBeLessThan(10);
  }, 120_000);
});

const listIn = (files: Readonly<Record<string, Uint8Array>>): string => Object.keys(files).find((name) => name.startsWith("list-")) ?? "";

/** Packed as our own archives are: nothing compressed, sizes behind the bytes. */
function packed(files: Readonly<Record<string, Uint8Array>>): Uint8Array {
  const parts: Uint8Array[] = [];
  const number = (value: number, bytes: number): number[] => Array.from({ length: bytes }, (_, i) => (value >>> (8 * i)) & 255);
  for (const [name, bytes] of Object.entries(files)) {
    const named = new TextEncoder().encode(name.startsWith("list-") ? `list-${sha256(bytes)}.json` : name);
    parts.push(
      new Uint8Array([...number(0x04034b50, 4), ...number(20, 2), ...number(8, 2), ...number(0, 18), ...number(named.length, 2), 0, 0]),
      named,
      bytes,
    );
    parts.push(new Uint8Array([...number(0x08074b50, 4), ...number(0, 4), ...number(bytes.length, 4), ...number(bytes.length, 4)]));
  }
  parts.push(new Uint8Array([...number(0x02014b50, 4), ...number(0, 60)]));
  return Uint8Array.from(Buffer.concat(parts));
}
