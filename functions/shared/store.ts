import type { PutObjectCommand } from "@aws-sdk/client-s3";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { base64Of, sha256Of } from "./checksum.ts";
import { type Found, found } from "./found.ts";
import type { S3, StorePlace } from "./s3.ts";

/** As much of Node's own stream as is needed here, so that this file knows no Node. */
interface NodeReadable {
  once(event: "error", told: (error: Error) => void): unknown;
}

export interface StoreSettings extends StorePlace {
  /** Node only: `Readable.fromWeb`, since the client's Node transport knows no web streams. Not set on workerd. */
  readonly fromWeb?: (stream: ReadableStream<Uint8Array>) => NodeReadable;
}

export interface PutAbout {
  /** Exact number of bytes; a store that gets fewer or more refuses. */
  readonly length: number;
  readonly type: string;
  /** Hex SHA-256, of a stream where it is known beforehand: it goes into the signature and into the checksum header, so that a strict store checks it too. */
  readonly sha256?: string;
  /** Ends it from outside: `store-unavailable`. */
  readonly givenUp?: AbortSignal;
}

export interface StoredAbout {
  readonly length: number;
  readonly type: string;
}

/** The port: everything the functions ask of an S3 store. No listing, no conditional writes; what a store makes of a checksum is not relied on. */
export interface Store {
  /** Kept once this says so: asked again after it said yes, which every store must answer with what it took last. */
  put(key: string, body: Uint8Array | ReadableStream<Uint8Array>, about: PutAbout): Promise<Outcome<StoredAbout>>;
  get(key: string): Promise<Outcome<Found>>;
  head(key: string): Promise<Outcome<StoredAbout>>;
  /** Removing what is not there succeeds. */
  remove(key: string): Promise<Outcome<null>>;
}

/** How long the store may take to begin its answer. */
const ANSWER_MS = 15_000;
/** To take bytes that are all here. */
const PUT_MS = 30_000;
/** To take a stream: that waits for a phone on a thin line, and whoever streams gives up on a store that falls silent. */
const STREAM_MS = 600_000;

/**
 * The S3 client behind the port, loaded when it is first asked: most requests never reach the store. Tried once: a stream cannot be sent
 * twice, and whoever asks (phone, queue) asks again. A put carries `x-amz-checksum-sha256`, signed, which a bucket with a lock may ask for;
 * the client's own checksums are off, since it sends them in a trailer that many stores refuse (aws-sdk-js-v3#6810). Refusals:
 * `store-unavailable`, and `photo-unknown` or `record-unknown` for an object that is not there.
 */
export function makeStore(settings: StoreSettings): Store {
  let loaded: Promise<S3> | undefined;
  const s3 = (): Promise<S3> => {
    loaded ??= import("./s3.ts").then(({ s3Of }) => s3Of(settings));
    return loaded;
  };
  const at = (key: string) => ({ Bucket: settings.bucket, Key: key });

  return {
    put: (key, body, about) =>
      asked(key, body instanceof Uint8Array ? PUT_MS : STREAM_MS, async (limit) => {
        about.givenUp?.addEventListener("abort", () => limit.abort(), { once: true });
        let sent: unknown = body;
        if (!(body instanceof Uint8Array) && settings.fromWeb) {
          const readable = settings.fromWeb(body);
          // The client's Node transport only pipes: it would wait for ever for a body that has broken off.
          readable.once("error", () => limit.abort());
          sent = readable;
        }
        const { client, PutObjectCommand, HeadObjectCommand } = await s3();
        const sha256 = about.sha256 ?? (body instanceof Uint8Array ? await sha256Of(body) : undefined);
        const command = new PutObjectCommand({
          ...at(key),
          Body: sent as Uint8Array,
          ContentLength: about.length,
          ContentType: about.type,
          ...(sha256 === undefined ? {} : { ChecksumSHA256: base64Of(sha256) }),
        });
        if (sha256 !== undefined) signWith(command, sha256);
        await client.send(command, { abortSignal: limit.signal });
        // Whoever was told that it is stored lets go of the bytes: a store that only says so is asked for what it has.
        const kept = await client.send(new HeadObjectCommand(at(key)), { abortSignal: limit.signal }).catch(notKept);
        if (kept.ContentLength !== about.length) throw new NotKept();
        return { length: about.length, type: about.type };
      }),
    get: (key) =>
      asked(key, ANSWER_MS, async ({ signal }) => {
        const { client, GetObjectCommand } = await s3();
        const answer = await client.send(new GetObjectCommand(at(key)), { abortSignal: signal });
        const stream = answer.Body ? (answer.Body.transformToWebStream() as ReadableStream<Uint8Array>) : emptyStream();
        return found(key, stream, answer.ContentLength ?? 0, answer.ContentType ?? "application/octet-stream");
      }),
    head: (key) =>
      asked(key, ANSWER_MS, async ({ signal }) => {
        const { client, HeadObjectCommand } = await s3();
        const answer = await client.send(new HeadObjectCommand(at(key)), { abortSignal: signal });
        return { length: answer.ContentLength ?? 0, type: answer.ContentType ?? "application/octet-stream" };
      }),
    remove: (key) =>
      asked(key, ANSWER_MS, async ({ signal }) => {
        const { client, DeleteObjectCommand } = await s3();
        await client.send(new DeleteObjectCommand(at(key)), { abortSignal: signal });
        return null;
      }).then((outcome) => (outcome.ok || !isMissing(outcome.refusal.code) ? outcome : ok(null))),
  };
}

/** A store said yes and has nothing under the name, or another length. */
class NotKept extends Error {
  override readonly name = "NotKept";
}

/** What is not there after a yes is the store's fault, and no photo that nobody knows. */
function notKept(thrown: Error & { readonly $metadata?: { readonly httpStatusCode?: number } }): never {
  throw thrown.$metadata?.httpStatusCode === 404 ? new NotKept() : thrown;
}

function signWith(command: PutObjectCommand, sha256: string): void {
  command.middlewareStack.add(
    (next) => (sent) => {
      (sent.request as { headers: Record<string, string> }).headers["x-amz-content-sha256"] = sha256;
      return next(sent);
    },
    { step: "build", name: "knownContentHash" },
  );
}

/** Runs one request; the time limit ends when the answer begins, so that a slow reader of the body is not cut off. */
async function asked<T>(key: string, milliseconds: number, ask: (limit: AbortController) => Promise<T>): Promise<Outcome<T>> {
  const limit = new AbortController();
  const timer = setTimeout(() => limit.abort(), milliseconds);
  try {
    return ok(await ask(limit));
  } catch (thrown) {
    return refusalOf(key, thrown);
  } finally {
    clearTimeout(timer);
  }
}

const isMissing = (code: string): boolean => code === "photo-unknown" || code === "record-unknown";

function refusalOf(key: string, thrown: unknown) {
  const error = thrown as { name?: string; message?: string; $metadata?: { httpStatusCode?: number } };
  const status = error.$metadata?.httpStatusCode;
  // A store that does not know the bucket also answers 404, and that is its fault, not a missing photo.
  if (status === 404 && error.name !== "NoSuchBucket") {
    return refuse(key.split("/")[1] === "records" ? "record-unknown" : "photo-unknown", `store/${key}`);
  }
  return refuse("store-unavailable", `store/${key}`, { why: error.name ?? "unknown", status: status ?? 0 });
}

const emptyStream = (): ReadableStream<Uint8Array> => new ReadableStream({ start: (controller) => controller.close() });
