import { createHash, randomBytes } from "node:crypto";
import { mkdtemp, readdir, rm, writeFile } from "node:fs/promises";
import { createServer, type IncomingMessage, request } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { originalKey, recordKey, renditionKey } from "#functions/shared/keys.ts";
import { makeStore, type Store } from "#functions/shared/store.ts";
import { type Child, startChild } from "../helpers/children.ts";
import { memoryStore } from "../helpers/memory-store.ts";

/** Where and with which keys a store is reached. */
interface Reached {
  readonly endpoint: string;
  readonly region: string;
  readonly bucket: string;
  readonly accessKeyId: string;
  readonly secretAccessKey: string;
}

const KEYS = { accessKeyId: "local", secretAccessKey: "a secret of this test" };
/** `npm run second-store` names a store of another make. */
const second: (Reached & { readonly name: string }) | undefined =
  process.env.ASBURIED_SECOND_STORE === undefined ? undefined : JSON.parse(process.env.ASBURIED_SECOND_STORE);
const sha = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
/** The hash of a whole object, or the code of its refusal. */
async function hashOf(store: Store, key: string): Promise<string> {
  const found = await store.get(key);
  const read = found.ok ? await found.value.bytes() : found;
  return read.ok ? sha(read.value) : read.refusal.code;
}
const streamOf = (bytes: Uint8Array) => new Blob([bytes as BlobPart]).stream() as ReadableStream<Uint8Array>;

let directory: string;
let child: Child;

const environment = () => ({
  STORE_DIRECTORY: join(directory, "objects"),
  STORE_PORT: "0",
  STORE_ACCESS_KEY: KEYS.accessKeyId,
  STORE_SECRET_KEY: KEYS.secretAccessKey,
  STORE_BUCKET: "asburied",
});

const local = (port = child.port): Reached => ({ endpoint: `http://127.0.0.1:${port}`, region: "auto", bucket: "asburied", ...KEYS });

const clientOf = (reached: Reached): Store =>
  makeStore({ ...reached, fromWeb: (stream) => Readable.fromWeb(stream as Parameters<typeof Readable.fromWeb>[0]) });

beforeAll(async () => {
  directory = await mkdtemp(join(tmpdir(), "asburied-store-"));
  child = await startChild("infra/local/store.ts", environment());
});
afterAll(async () => {
  await child.end();
  await rm(directory, { recursive: true, force: true });
});

const secondOne = second === undefined ? [] : [second];

describe.each([
  { name: "the local S3-protocol server", make: () => clientOf(local()) },
  { name: "the one in memory", make: () => memoryStore() },
  ...secondOne.map((reached) => ({ name: reached.name, make: () => clientOf(reached) })),
])("the store's contract: $name", ({ make }) => {
  let store: Store;
  beforeAll(() => {
    store = make();
  });

  it("gives back what was put, with length and type", async () => {
    const bytes = randomBytes(300_000);
    const key = originalKey("garden", sha(bytes));
    expect(await store.put(key, bytes, { length: bytes.length, type: "image/jpeg", sha256: sha(bytes) })).toMatchObject({ ok: true });
    expect(await store.head(key)).toEqual({ ok: true, value: { length: 300_000, type: "image/jpeg" } });
    const found = await store.get(key);
    if (!found.ok) throw new Error(found.refusal.code);
    expect({ length: found.value.length, type: found.value.type }).toEqual({ length: 300_000, type: "image/jpeg" });
    const read = await found.value.bytes();
    expect(read.ok && sha(read.value)).toBe(sha(bytes));
  });

  it("takes a stream of known length", async () => {
    const bytes = randomBytes(3_000_001);
    const key = renditionKey("garden", sha(bytes), "screen");
    expect(await store.put(key, streamOf(bytes), { length: bytes.length, type: "image/jpeg", sha256: sha(bytes) })).toMatchObject({
      ok: true,
    });
    const found = await store.get(key);
    if (!found.ok) throw new Error(found.refusal.code);
    expect(sha(new Uint8Array(await new Response(found.value.stream as BodyInit).arrayBuffer()))).toBe(sha(bytes));
  });

  it("keeps zero bytes", async () => {
    const key = originalKey("garden", sha(new Uint8Array()));
    expect(await store.put(key, new Uint8Array(), { length: 0, type: "image/jpeg" })).toMatchObject({ ok: true });
    const found = await store.get(key);
    if (!found.ok) throw new Error(found.refusal.code);
    expect(found.value.length).toBe(0);
    expect(await found.value.bytes()).toEqual({ ok: true, value: new Uint8Array() });
  });

  it("overwrites", async () => {
    const key = recordKey("garden", "job-1", 1);
    await store.put(key, Buffer.from("first, and longer"), { length: 17, type: "application/pdf" });
    await store.put(key, Buffer.from("second"), { length: 6, type: "application/pdf" });
    expect(await hashOf(store, key)).toBe(sha(Buffer.from("second")));
  });

  it("removes, and removing again succeeds", async () => {
    const key = recordKey("garden", "job-2", 1);
    await store.put(key, Buffer.from("x"), { length: 1, type: "application/pdf" });
    expect(await store.remove(key)).toEqual({ ok: true, value: null });
    expect(await store.head(key)).toMatchObject({ ok: false, refusal: { code: "record-unknown" } });
    expect(await store.remove(key)).toEqual({ ok: true, value: null });
  });

  it("says which thing is not there", async () => {
    expect(await store.get(originalKey("garden", "0".repeat(64)))).toMatchObject({ ok: false, refusal: { code: "photo-unknown" } });
    expect(await store.get(recordKey("garden", "nothing", 3))).toMatchObject({ ok: false, refusal: { code: "record-unknown" } });
  });

  it("keeps companies apart", async () => {
    const bytes = Buffer.from("the same bytes");
    await store.put(originalKey("one", sha(bytes)), bytes, { length: bytes.length, type: "image/png" });
    expect(await store.head(originalKey("two", sha(bytes)))).toMatchObject({ ok: false });
  });
});

describe.each([
  { name: "the local S3-protocol server", reached: () => local() },
  ...secondOne.map((one) => ({ name: one.name, reached: () => one })),
])("the store's contract over the wire: $name", ({ reached }) => {
  it("refuses another secret, another key pair, and a request without a signature", async () => {
    const key = originalKey("garden", "1".repeat(64));
    const { endpoint, bucket, accessKeyId } = reached();
    await clientOf(reached()).put(key, Buffer.from("x"), { length: 1, type: "image/jpeg" });
    for (const keys of [
      { accessKeyId, secretAccessKey: "wrong" },
      // the pair that the local server's package comes with
      { accessKeyId: "S3RVER", secretAccessKey: "S3RVER" },
    ]) {
      expect(await clientOf({ ...reached(), ...keys }).get(key)).toMatchObject({
        ok: false,
        refusal: { code: "store-unavailable", figures: { status: 403 } },
      });
    }
    // 400 and 401 beside 403: a store that has another interface beside this one does not know whose door it was
    for (const asked of [{ method: "GET" }, { method: "PUT", body: "another" }, { method: "DELETE" }]) {
      const answer = await fetch(`${endpoint}/${bucket}/${key}`, asked);
      expect([400, 401, 403]).toContain(answer.status);
      expect(await answer.text()).not.toBe("x");
    }
    expect(await hashOf(clientOf(reached()), key)).toBe(sha(Buffer.from("x")));
  });

  it("takes every put with the digest of its bytes as a signed checksum header", async () => {
    const bytes = randomBytes(200_000);
    const key = originalKey("garden", sha(bytes));
    const about = { length: bytes.length, type: "image/jpeg" };
    await listenedTo(reached(), async (between, heard) => {
      const store = clientOf(between);
      expect(await store.put(key, bytes, { ...about, sha256: sha(bytes) })).toMatchObject({ ok: true });
      expect(await store.put(key, streamOf(bytes), { ...about, sha256: sha(bytes) })).toMatchObject({ ok: true });
      // not known beforehand: taken of the bytes
      expect(await store.put(key, bytes, about)).toMatchObject({ ok: true });
      expect(await hashOf(store, key)).toBe(sha(bytes));
      const puts = heard.filter(({ method }) => method === "PUT").map(({ headers }) => headers);
      expect(puts.map((headers) => headers["x-amz-checksum-sha256"])).toEqual(
        Array(3).fill(createHash("sha256").update(bytes).digest("base64")),
      );
      expect(puts.map((headers) => headers["x-amz-content-sha256"])).toEqual(Array(3).fill(sha(bytes)));
      for (const { authorization } of puts) expect(authorization).toMatch(/SignedHeaders=[^,]*x-amz-checksum-sha256/);
    });
  });

  it("keeps the whole object when a later upload of it breaks off", async () => {
    const bytes = randomBytes(400_000);
    const key = originalKey("garden", sha(bytes));
    const store = clientOf(reached());
    await store.put(key, bytes, { length: bytes.length, type: "image/jpeg" });
    const broken = new ReadableStream<Uint8Array>({
      start: (controller) => controller.enqueue(bytes.subarray(0, 200_000)),
      pull: (controller) => controller.error(new Error("the phone is gone")),
    });
    expect(await store.put(key, broken, { length: bytes.length, type: "image/jpeg", sha256: sha(bytes) })).toMatchObject({
      ok: false,
      refusal: { code: "store-unavailable" },
    });
    expect(await hashOf(store, key)).toBe(sha(bytes));
  });

  it("leaves nothing under the name when the first upload breaks off, and no parts behind", async () => {
    const key = originalKey("cut", "2".repeat(64));
    await cutOff(reached(), key);
    expect(await clientOf(reached()).head(key)).toMatchObject({ ok: false, refusal: { code: "photo-unknown" } });
  });
});

describe("the local S3-protocol server alone", () => {
  it("finds everything again after kill -9, and clears the parts of what was under way", async () => {
    const bytes = randomBytes(100_000);
    const key = originalKey("garden", sha(bytes));
    await clientOf(local()).put(key, bytes, { length: bytes.length, type: "image/jpeg" });
    expect(await child.end("SIGKILL")).toBe("SIGKILL");
    const folder = join(directory, "objects/asburied/garden/originals");
    await writeFile(join(folder, `${sha(bytes)}._S3rver_object.part-00000000-0000-4000-8000-000000000000`), "half");
    child = await startChild("infra/local/store.ts", environment());
    expect(await hashOf(clientOf(local()), key)).toBe(sha(bytes));
    expect((await readdir(folder)).filter((name) => name.includes(".part-"))).toEqual([]);
  });

  it("says that the store is down", async () => {
    const store = clientOf(local(1));
    expect(await store.head(originalKey("garden", "3".repeat(64)))).toMatchObject({ ok: false, refusal: { code: "store-unavailable" } });
  });

  it("names what is missing in its environment and ends", async () => {
    const { STORE_BUCKET, STORE_PORT, ...rest } = environment();
    await expect(startChild("infra/local/store.ts", rest)).rejects.toThrow("missing in the environment: STORE_PORT, STORE_BUCKET");
    expect([STORE_BUCKET, STORE_PORT]).toEqual(["asburied", "0"]);
  });
});

/** A door before the store that hears each request's headers and hands everything on as it came. */
async function listenedTo(reached: Reached, use: (between: Reached, heard: readonly IncomingMessage[]) => Promise<void>): Promise<void> {
  const heard: IncomingMessage[] = [];
  const { hostname, port } = new URL(reached.endpoint);
  const door = createServer((asked, answer) => {
    heard.push(asked);
    const further = request({ hostname, port, method: asked.method, path: asked.url, headers: asked.headers }, (given) => {
      answer.writeHead(given.statusCode ?? 500, given.headers);
      given.pipe(answer);
    });
    further.on("error", () => answer.destroy());
    asked.pipe(further);
  });
  await new Promise<void>((resolve) => door.listen(0, "127.0.0.1", resolve));
  try {
    await use({ ...reached, endpoint: `http://127.0.0.1:${(door.address() as AddressInfo).port}` }, heard);
  } finally {
    door.closeAllConnections();
    await new Promise((resolve) => door.close(resolve));
  }
}

/** Sends half of an upload with a good signature's headers missing nothing but the rest of the body. */
async function cutOff({ endpoint, region, bucket, ...credentials }: Reached, key: string): Promise<void> {
  const { S3Client, PutObjectCommand } = await import("@aws-sdk/client-s3");
  let headers: Record<string, string> = {};
  const signer = new S3Client({
    region,
    endpoint,
    forcePathStyle: true,
    credentials,
    maxAttempts: 1,
    requestChecksumCalculation: "WHEN_REQUIRED",
    requestHandler: {
      handle: async (signed: { headers: Record<string, string> }) => {
        headers = signed.headers;
        throw new Error("signed only");
      },
    } as never,
  });
  await signer
    .send(new PutObjectCommand({ Bucket: bucket, Key: key, Body: Buffer.alloc(200_000, 7), ContentLength: 200_000 }))
    .catch(() => undefined);
  expect(headers.authorization).toMatch(/^AWS4-HMAC-SHA256 /);
  await new Promise<void>((resolve) => {
    const put = request(`${endpoint}/${bucket}/${key}`, { method: "PUT", headers }, () => resolve());
    put.on("error", () => resolve());
    put.write(Buffer.alloc(100_000, 7), () => setTimeout(() => put.destroy(), 200));
    put.on("close", () => setTimeout(resolve, 300));
  });
}
