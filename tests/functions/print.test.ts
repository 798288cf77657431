import { createHash } from "node:crypto";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  makeStore,
  type PrintAnswer,
  type PrintRecord,
  type PrintRequest,
  type Problem,
  printRequest,
  type Store,
} from "#functions/shared/index.ts";
import { browserEnvironment } from "#infra/browser/index.ts";
import { type Child, startChild } from "../helpers/children.ts";
import { imagesOf, readPdf, readWords } from "../helpers/pdf.ts";
import { renditionOf } from "../helpers/printer.ts";
import { sampleModel, samplePhotoCount } from "../samples/record-model.ts";
import { type SamplePhoto, samplePhotos } from "../samples/record-photos.ts";

const SECRET = "a service secret of this test";
const KEY = "kettle/records/job/1.pdf";
const sha = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

let directory: string;
let storeChild: Child;
let printChild: Child;
let store: Store;
let photos: readonly SamplePhoto[];
let request: PrintRecord;
/** Of one step: for whatever is asked of the process and not of the whole record. */
let short: PrintRecord;
let processLog: string;

const printEnvironment = async (storePort: number): Promise<Record<string, string>> => ({
  PATH: process.env.PATH ?? "",
  ...(await browserEnvironment()),
  PRINT_PORT: "0",
  SERVICE_SECRET: SECRET,
  STORE_ENDPOINT: `http://127.0.0.1:${storePort}`,
  STORE_REGION: "auto",
  STORE_BUCKET: "asburied",
  STORE_ACCESS_KEY: "local",
  STORE_SECRET_KEY: "a store secret of this test",
  ASBURIED_PROCESS_LOG: processLog,
});

/** Ids of the browsers that print has started, from the log of processes. */
const browsers = async (): Promise<number[]> =>
  (await readFile(processLog, "utf8").catch(() => ""))
    .split("\n")
    .filter((line) => line.includes('"browser"'))
    .map((line) => (JSON.parse(line) as { pid: number }).pid);

const gone = async (pid: number): Promise<boolean> => {
  for (let round = 0; round < 100; round += 1) {
    // a zombie waits for its parent and runs no more
    const state = await readFile(`/proc/${pid}/stat`, "utf8").catch(() => undefined);
    if (state === undefined || /\) Z /.test(state)) return true;
    await new Promise((later) => setTimeout(later, 50));
  }
  return false;
};

beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-print-"));
  processLog = join(directory, "processes.log");
  storeChild = await startChild("infra/local/store.ts", {
    STORE_DIRECTORY: join(directory, "objects"),
    STORE_PORT: "0",
    STORE_ACCESS_KEY: "local",
    STORE_SECRET_KEY: "a store secret of this test",
    STORE_BUCKET: "asburied",
  });
  printChild = await startChild("functions/print/main.ts", await printEnvironment(storeChild.port));
  store = makeStore({
    endpoint: `http://127.0.0.1:${storeChild.port}`,
    region: "auto",
    bucket: "asburied",
    accessKeyId: "local",
    secretAccessKey: "a store secret of this test",
  });
  photos = await samplePhotos(samplePhotoCount);
  for (const { sha256, bytes } of photos) {
    const put = await store.put(renditionOf(sha256), bytes, { length: bytes.length, type: "image/jpeg" });
    if (!put.ok) throw new Error(JSON.stringify(put.refusal));
  }
  request = {
    kind: "record",
    model: sampleModel(photos),
    key: KEY,
    photos: Object.fromEntries(photos.map(({ sha256 }) => [sha256, [{ key: renditionOf(sha256) }]])),
    attachments: [{ name: "ledger.json", type: "application/json", text: "{}", relationship: "Data" }],
  };
  const steps = request.model.steps.slice(0, 1);
  const named = steps.flatMap(({ pictures }) => pictures.map(({ photo }) => photo));
  short = {
    ...request,
    model: { ...request.model, steps },
    photos: Object.fromEntries(
      named.filter((photo) => request.photos[photo] !== undefined).map((photo) => [photo, [{ key: renditionOf(photo) }]]),
    ),
  };
});
afterAll(async () => {
  await printChild.end();
  await storeChild.end();
  await rm(directory, { recursive: true, force: true });
});

const send = (body: BodyInit, headers: Readonly<Record<string, string>>, path = "/print", port = printChild.port): Promise<Response> =>
  fetch(`http://127.0.0.1:${port}${path}`, { method: "POST", body, headers: { ...headers, connection: "close" } });
const post = async (what: PrintRequest, change: { secret?: string; now?: number } = {}, port = printChild.port): Promise<Response> => {
  const { body, headers } = await printRequest(change.secret ?? SECRET, what, change.now ?? Date.now());
  return send(body, headers, "/print", port);
};
const refusal = async (response: Response): Promise<Problem> => {
  expect(response.headers.get("content-type")).toBe("application/problem+json");
  return (await response.json()) as Problem;
};

describe("POST /print", () => {
  it("puts the record into the store under its key and answers with its hash, size and pages", async () => {
    const response = await post(request);
    expect(response.status).toBe(200);
    const answer = (await response.json()) as PrintAnswer;
    const got = await store.get(KEY);
    if (!got.ok) throw new Error(JSON.stringify(got.refusal));
    expect(got.value.type).toBe("application/pdf");
    const bytes = await got.value.bytes();
    if (!bytes.ok) throw new Error(JSON.stringify(bytes.refusal));
    const { pages } = await readWords(bytes.value);
    expect(answer).toEqual({
      sha256: sha(bytes.value),
      bytes: bytes.value.length,
      pages: pages.length,
      missing: [],
      shown: expect.anything(),
    });
    // what the seal will name: the words of the pages as another reading finds them, the pictures byte for byte
    expect(answer.shown?.pages).toEqual(pages);
    const inside = new Set((await imagesOf(bytes.value)).map((image) => sha(image.bytes)));
    const pictures = Object.entries(answer.shown?.pictures ?? {});
    expect(pictures.map(([photo]) => photo).sort()).toEqual(photos.map(({ sha256 }) => sha256).sort());
    expect(pictures.filter(([, print]) => !inside.has(print))).toEqual([]);
  });

  it("puts a seal into what it printed, and nothing else of it changes", async () => {
    expect((await post(short)).status).toBe(200);
    const bytesAt = async (key: string): Promise<Uint8Array> => {
      const got = await store.get(key);
      const bytes = got.ok ? await got.value.bytes() : got;
      if (!bytes.ok) throw new Error(JSON.stringify(bytes.refusal));
      return bytes.value;
    };
    const unsealed = await bytesAt(KEY);
    const before = await readPdf(unsealed);
    const attachments = [
      { name: "seal.jws", type: "application/jose", text: "e30.e30.e30", relationship: "Supplement" },
      { name: "text.json", type: "application/json", text: "[]", relationship: "Data" },
    ] as const;
    const sealing = { kind: "sealing", key: KEY, attachments, issuedAt: short.model.title.issuedAt } as const;
    const response = await post(sealing);
    expect(response.status).toBe(200);
    const bytes = await bytesAt(KEY);
    expect(await response.json()).toEqual({ sha256: sha(bytes), bytes: bytes.length, pages: before.pages.length, missing: [] });
    const { attachments: files, ...after } = await readPdf(bytes);
    const { attachments: earlier, ...rest } = before;
    expect(after).toEqual(rest);
    const texts = [...files].map(([name, content]) => [name, new TextDecoder().decode(content)]);
    expect(texts).toEqual([
      ...[...earlier].map(([name, content]) => [name, new TextDecoder().decode(content)]),
      ...attachments.map(({ name, text }) => [name, text]),
    ]);
    // print had the document at hand; from the store it is the same
    const put = await store.put(KEY, unsealed, { length: unsealed.length, type: "application/pdf" });
    expect(put.ok).toBe(true);
    expect((await post(sealing)).status).toBe(200);
    expect(sha(await bytesAt(KEY))).toBe(sha(bytes));
    const missing = await post({ ...sealing, key: "kettle/records/job/none.pdf" });
    expect([missing.status, (await refusal(missing)).code]).toEqual([404, "record-unknown"]);
  });

  it("refuses a body that its token was not made for", async () => {
    const { body, headers } = await printRequest(SECRET, short, Date.now());
    const changed = new TextDecoder().decode(body).replace('"version":2', '"version":3');
    for (const response of [
      await send(changed, headers),
      await send(body, { "content-type": "application/json" }),
      await post(short, { secret: "another secret" }),
      await post(short, { now: Date.now() - 120_000 }),
    ]) {
      expect(response.status).toBe(401);
      expect((await refusal(response)).code).toBe("service-token");
    }
  });

  it("refuses a request that reaches into another company's folder", async () => {
    const sha256 = photos[0]?.sha256 as string;
    const response = await post({ ...short, photos: { [sha256]: [{ key: `other/renditions/${sha256}/print.jpg` }] } });
    expect(response.status).toBe(400);
    expect(await refusal(response)).toMatchObject({ code: "request-shape", place: `body/photos/${sha256}` });
  });

  it("refuses a model that lacks a word, and prints the next one", async () => {
    const { warranty: _left, ...words } = short.model.words;
    const response = await post({ ...short, model: { ...short.model, words } });
    expect(response.status).toBe(502);
    expect((await refusal(response)).code).toBe("print-failed");
    expect((await post(short)).status).toBe(200);
  });

  it("prints four at the same time, one after another, all alike", async () => {
    const answers = await Promise.all(Array.from({ length: 4 }, async () => (await post(short)).json() as Promise<PrintAnswer>));
    expect(new Set(answers.map(({ sha256 }) => sha256)).size).toBe(1);
  });

  it("answers every other route with a refusal", async () => {
    expect((await send("{}", {}, "/elsewhere")).status).toBe(404);
    expect((await fetch(`http://127.0.0.1:${printChild.port}/print`, { headers: { connection: "close" } })).status).toBe(404);
  });
});

describe("the process", () => {
  it("is healthy, and again after its browser was killed", async () => {
    const health = () => fetch(`http://127.0.0.1:${printChild.port}/health`, { headers: { connection: "close" } });
    expect((await health()).status).toBe(200);
    const pid = (await browsers()).at(-1) as number;
    process.kill(pid, "SIGKILL");
    expect(await gone(pid)).toBe(true);
    expect((await post(short)).status).toBe(200);
    expect((await browsers()).at(-1)).not.toBe(pid);
    expect((await health()).status).toBe(200);
  });

  it("hands none of its secrets to the browser", async () => {
    const environment = await readFile(`/proc/${(await browsers()).at(-1)}/environ`, "utf8");
    expect(environment).toContain("BROWSER_COMMAND=");
    expect(environment).not.toContain("secret");
    expect(environment).not.toContain("STORE_");
  });

  it("takes its browser with it, ended in order or killed", async () => {
    const environment = await printEnvironment(storeChild.port);
    for (const [signal, how] of [
      ["SIGTERM", 0],
      ["SIGKILL", "SIGKILL"],
    ] as const) {
      const child = await startChild("functions/print/main.ts", environment);
      const pid = (await browsers()).at(-1) as number;
      expect(await child.end(signal)).toBe(how);
      expect(await gone(pid), signal).toBe(true);
    }
  });

  it("says which variables are missing, all at once", async () => {
    const { SERVICE_SECRET: _secret, BROWSER_PATH: _path, ...fewer } = await printEnvironment(storeChild.port);
    await expect(startChild("functions/print/main.ts", fewer)).rejects.toThrow("missing in the environment: SERVICE_SECRET, BROWSER_PATH");
  });

  it("runs without a browser that starts, and says so", async () => {
    const child = await startChild("functions/print/main.ts", {
      ...(await printEnvironment(storeChild.port)),
      BROWSER_PATH: "/nowhere/browser",
    });
    try {
      const health = await fetch(`http://127.0.0.1:${child.port}/health`, { headers: { connection: "close" } });
      expect(health.status).toBe(502);
      const response = await post(short, {}, child.port);
      expect((await refusal(response)).figures.why).toBe("browser");
    } finally {
      await child.end();
    }
  });

  it("says that the store is down", async () => {
    const closed = await startChild("infra/local/store.ts", {
      STORE_DIRECTORY: join(directory, "closed"),
      STORE_PORT: "0",
      STORE_ACCESS_KEY: "local",
      STORE_SECRET_KEY: "a store secret of this test",
      STORE_BUCKET: "asburied",
    });
    const child = await startChild("functions/print/main.ts", await printEnvironment(closed.port));
    await closed.end("SIGKILL");
    try {
      const response = await post(short, {}, child.port);
      expect(response.status).toBe(503);
      expect((await refusal(response)).code).toBe("store-unavailable");
    } finally {
      await child.end();
    }
  });
});
