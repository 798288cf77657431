import { readFileSync, rmSync } from "node:fs";
import { connect } from "node:net";
import { join } from "node:path";
import { PDFDocument } from "@cantoo/pdf-lib";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { batchOf, type Company, type Loose, newCompany, newJob, sha256, until } from "../helpers/edge.ts";
import { verifyLedger } from "../helpers/verifier.ts";

const sample = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../samples/photos/${name}`, import.meta.url)));
/** A real photo with some bytes after its end, so that each test has its own. */
let count = 0;
const photoOf = (name = "camera-640.jpg"): Uint8Array => {
  count += 1;
  return new Uint8Array([...sample(name), ...new TextEncoder().encode(`asburied ${count}`)]);
};

let company: Company;
beforeAll(async () => {
  company = await newCompany(inject("edge"), inject("operatorKey"));
});
const put = (bytes: Uint8Array, sha = sha256(bytes), who = company.crew) => who.ask("PUT", `/api/photos/${sha}`, { bytes });
const stateOf = async (sha: string) => (await company.crew.get(`/api/photos/${sha}`)).body;
const picture = async (job: Awaited<ReturnType<typeof newJob>>, bytes: Uint8Array) => {
  const what = { item: "footing-seen", photo: sha256(bytes), bytes: bytes.length, type: "image/jpeg" };
  const entry = await job.phone.entry(job.job, company.people.crew, "picture-taken", what);
  return company.crew.post(`/api/jobs/${job.job}/entries`, batchOf(entry));
};
const readIn = async (job: string, sha: string) => {
  const { entries } = (await company.office.get(`/api/jobs/${job}/ledger`)).body;
  return entries.filter((e: Loose) => e.envelope.kind === "picture-read" && e.body.what.content.photo === sha);
};

describe("photos", () => {
  it("stores a photo under its hash, once, and gives the same bytes back to the office", async () => {
    const bytes = photoOf();
    const sha = sha256(bytes);
    const first = await put(bytes);
    expect(first).toMatchObject({ status: 201, body: { sha256: sha, bytes: bytes.length, type: "image/jpeg" } });
    expect(await put(bytes)).toMatchObject({ status: 200, body: first.body });
    const back = await company.office.get(`/api/photos/${sha}/original`);
    expect(sha256(back.bytes)).toBe(sha);
    expect(back.headers.get("content-type")).toBe("image/jpeg");
    expect(back.headers.get("content-security-policy")).toContain("sandbox");
  });

  it("bytes that the store has lost are taken again from whoever still has them, and read; a paper's too", async () => {
    const photo = photoOf();
    const sheet = await PDFDocument.create();
    sheet.addPage();
    const paper = new Uint8Array(await sheet.save());
    for (const [bytes, path, folder] of [
      [photo, "photos", "originals"],
      [paper, "papers", "papers"],
    ] as const) {
      const sha = sha256(bytes);
      const send = () => company.office.ask("PUT", `/api/${path}/${sha}`, { bytes });
      expect((await send()).status).toBe(201);
      const object = join(inject("stackDirectory"), "store", inject("storeBucket"), company.company, folder, `${sha}._S3rver_object`);
      rmSync(object);
      expect((await send()).status).toBe(201);
      expect(sha256(new Uint8Array(readFileSync(object)))).toBe(sha);
    }
    expect(
      (
        await until(
          () => stateOf(sha256(photo)),
          ({ state }) => state !== "stored",
        )
      ).state,
    ).toBe("read");
  });

  it("stores eight megabytes through several blocks", async () => {
    const bytes = new Uint8Array(8_400_000).map((_, i) => (i * 7919) % 251);
    bytes.set(sample("camera-640.jpg").subarray(0, 64));
    expect((await put(bytes)).status).toBe(201);
    const back = await company.office.get(`/api/photos/${sha256(bytes)}/original`);
    expect(sha256(back.bytes)).toBe(sha256(bytes));
  });

  it("refuses a wrong hash and keeps nothing of it; the right one is stored afterwards", async () => {
    const bytes = photoOf();
    const other = sha256(photoOf());
    const answer = await put(bytes, other);
    expect(answer).toMatchObject({ status: 422, body: { code: "photo-hash-differs", figures: { found: sha256(bytes) } } });
    expect((await company.crew.get(`/api/photos/${other}`)).status).toBe(404);
    expect((await put(bytes)).status).toBe(201);
  });

  it("refuses a hash that is wrong over many blocks", async () => {
    const bytes = new Uint8Array(5_000_000);
    bytes.set(sample("camera-640.jpg").subarray(0, 64));
    expect((await put(bytes, "f".repeat(64))).body.code).toBe("photo-hash-differs");
  });

  it("refuses zero bytes, what is no photo, and an unknown length", async () => {
    expect(await put(new Uint8Array(0))).toMatchObject({ status: 422, body: { code: "photo-empty" } });
    const text = new TextEncoder().encode("<svg xmlns='http://www.w3.org/2000/svg'><script/></svg>");
    expect(await put(text)).toMatchObject({ status: 415, body: { code: "photo-type" } });
    const bytes = photoOf();
    const stream = new ReadableStream<Uint8Array>({
      start(controller) {
        controller.enqueue(bytes);
        controller.close();
      },
    });
    const chunked = await company.crew.ask("PUT", `/api/photos/${sha256(bytes)}`, { bytes: stream });
    expect(chunked).toMatchObject({ status: 411, body: { code: "photo-length-required" } });
  });

  it("refuses 26 MB with an answer that arrives, and takes 25", async () => {
    const large = new Uint8Array(26 * 1024 * 1024);
    large.set(sample("camera-640.jpg").subarray(0, 64));
    expect(await put(large)).toMatchObject({ status: 413, body: { code: "photo-too-large" } });
    const most = large.subarray(0, 25 * 1024 * 1024);
    expect((await put(most)).status).toBe(201);
  });

  it("takes a type that was told wrongly by its bytes", async () => {
    const bytes = photoOf();
    const answer = await company.crew.ask("PUT", `/api/photos/${sha256(bytes)}`, { bytes, headers: { "content-type": "image/png" } });
    expect(answer.body.type).toBe("image/jpeg");
  });

  it("the same photo sent by four at once is stored once and answered to all", async () => {
    const bytes = photoOf();
    const answers = await Promise.all([put(bytes), put(bytes), put(bytes), put(bytes)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 200, 200, 201]);
  });

  it("an upload that breaks off leaves nothing, and the next one is stored whole", async () => {
    const bytes = new Uint8Array(3_000_000);
    bytes.set(sample("camera-640.jpg").subarray(0, 64));
    bytes[2_999_999] = 7;
    const path = `/api/photos/${sha256(bytes)}`;
    const { hostname, port } = new URL(inject("edge"));
    await new Promise<void>((resolve) => {
      const socket = connect(Number(port), hostname, () => {
        const head = [`PUT ${path} HTTP/1.1`, `host: ${hostname}:${port}`, `cookie: ${company.crew.cookie}`, "x-asburied: 1"];
        socket.write([...head, `content-length: ${bytes.length}`, "", ""].join("\r\n"));
        socket.write(bytes.subarray(0, 1_500_000), () => setTimeout(() => socket.destroy(), 200));
      });
      socket.on("error", () => undefined).on("close", () => resolve());
    });
    expect((await company.crew.get(path)).status).toBe(404);
    expect((await put(bytes)).status).toBe(201);
    const back = await company.office.get(`${path}/original`);
    expect(sha256(back.bytes)).toBe(sha256(bytes));
  });

  it("twenty at once are all answered, good or refused", async () => {
    const answers = await Promise.all(
      Array.from({ length: 20 }, (_, i) => {
        const bytes = new Uint8Array(1_500_000);
        bytes.set(sample("camera-640.jpg").subarray(0, 64));
        bytes[1_000_000] = i;
        bytes[1_000_001] = 1;
        return i % 2 === 0 ? put(bytes) : put(bytes, sha256(photoOf()));
      }),
    );
    expect(answers.map(({ status }) => status)).toEqual(Array.from({ length: 20 }, (_, i) => (i % 2 === 0 ? 201 : 422)));
  });

  it("an address that is no hash is refused", async () => {
    expect(await put(photoOf(), "not-a-hash")).toMatchObject({ status: 400, body: { code: "request-shape" } });
  });
});

describe("what the machine reads", () => {
  it("comes into the job when the entry came first", async () => {
    const job = await newJob(company);
    const bytes = photoOf();
    expect((await picture(job, bytes)).body.answers[0].outcome).toBe("taken");
    await put(bytes);
    const state = await until(
      () => stateOf(sha256(bytes)),
      ({ state: s }) => s === "read",
    );
    expect(state.facts).toMatchObject({ sha: sha256(bytes), bytes: bytes.length, type: "image/jpeg", width: 640 });
    const [read] = await until(
      () => readIn(job.job, sha256(bytes)),
      (found) => found.length > 0,
    );
    expect(read.envelope.author).toEqual({ person: "program", phone: "edge" });
    const screen = await company.crew.get(`/api/photos/${sha256(bytes)}/screen`);
    expect(screen.status).toBe(200);
    expect([...screen.bytes.subarray(0, 2)]).toEqual([0xff, 0xd8]);
    expect((await company.crew.get(`/api/jobs/${job.job}`)).body.photos[sha256(bytes)].state).toBe("read");
  });

  it("comes into the job when the bytes came first, and into a second job too, once each", async () => {
    const bytes = photoOf("satellite-time.jpg");
    const sha = sha256(bytes);
    await put(bytes);
    await until(
      () => stateOf(sha),
      ({ state }) => state === "read",
    );
    const [one, two] = [await newJob(company), await newJob(company)];
    await picture(one, bytes);
    await picture(two, bytes);
    await picture(one, bytes);
    for (const { job } of [one, two]) {
      const found = await until(
        () => readIn(job, sha),
        (list) => list.length > 0,
      );
      expect(found.length).toBe(1);
    }
    await put(bytes);
    await new Promise((resolve) => setTimeout(resolve, 2_500));
    expect((await readIn(one.job, sha)).length).toBe(1);
    const ledger = await company.office.get(`/api/jobs/${one.job}/ledger`);
    expect(verifyLedger(new TextDecoder().decode(ledger.bytes)).faults).toEqual([]);
  });

  it("keeps the camera's position out of what a customer gets", async () => {
    const job = await newJob(company);
    const bytes = sample("drawn-wide-colours.heic");
    await put(bytes);
    await picture(job, bytes);
    const [read] = await until(
      () => readIn(job.job, sha256(bytes)),
      (list) => list.length > 0,
    );
    const { facts } = await stateOf(sha256(bytes));
    expect(facts.position).toMatchObject({ accuracy: 4500 });
    expect(read.body.what.content.facts).toEqual({ ...facts, position: null });
    expect(read.body.where.content).toEqual({ position: facts.position });
  });

  it("a photo cut off is a fact that says so: stored, unreadable, told to its job", async () => {
    const job = await newJob(company);
    const bytes = photoOf("park-cut-off.heic").subarray(0, 30_000);
    expect((await put(bytes)).status).toBe(201);
    await picture(job, bytes);
    const state = await until(
      () => stateOf(sha256(bytes)),
      ({ state: s }) => s !== "stored",
    );
    expect(state.state).toBe("unreadable");
    const [read] = await until(
      () => readIn(job.job, sha256(bytes)),
      (list) => list.length > 0,
    );
    expect(read.body.what.content.facts.unreadable.code).toMatch(/^photo-/);
    expect(await company.crew.get(`/api/photos/${sha256(bytes)}/screen`)).toMatchObject({
      status: 422,
      body: { code: "photo-unreadable" },
    });
    expect((await company.office.get(`/api/photos/${sha256(bytes)}/original`)).status).toBe(200);
  });
});
