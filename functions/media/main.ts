import type { AddressInfo } from "node:net";
import { Readable } from "node:stream";
import type { ReadableStream as NodeWebStream } from "node:stream/web";
import { makeStore, readEnvironment, readPort, tooOldNode } from "#functions/shared/index.ts";
import { gate } from "./gate.ts";
import { HeicDecoder } from "./heic.ts";
import { readPhoto } from "./read.ts";
import { mediaServer } from "./server.ts";

/** Photos in work at a time; each can take some 200 MB. Own. */
const AT_A_TIME = 2;

const stop = (sentence: string): never => {
  process.stderr.write(`media: ${sentence}\n`);
  process.exit(1);
};
const old = tooOldNode(process.version);
if (old) stop(old);
const environment = readEnvironment(process.env, [
  "MEDIA_PORT",
  "SERVICE_SECRET",
  "STORE_ENDPOINT",
  "STORE_REGION",
  "STORE_BUCKET",
  "STORE_ACCESS_KEY",
  "STORE_SECRET_KEY",
]);
const value = environment.ok ? environment.value : stop(`missing in the environment: ${environment.missing.join(", ")}`);
const port = readPort(value.MEDIA_PORT) ?? stop("MEDIA_PORT is no port");
const host = process.env.MEDIA_HOST ?? "127.0.0.1";

const store = makeStore({
  endpoint: value.STORE_ENDPOINT,
  region: value.STORE_REGION,
  bucket: value.STORE_BUCKET,
  accessKeyId: value.STORE_ACCESS_KEY,
  secretAccessKey: value.STORE_SECRET_KEY,
  fromWeb: (stream) => Readable.fromWeb(stream as NodeWebStream<Uint8Array>),
});
const heic = new HeicDecoder();
const oneOfFew = gate(AT_A_TIME);
const server = mediaServer({
  secret: value.SERVICE_SECRET,
  now: Date.now,
  // Only the edge reads these answers, and it makes its own sentences from code and figures.
  say: ({ code, place }) => `${code} at ${place}`,
  read: (company, sha) => oneOfFew(() => readPhoto(company, sha, store, heic)),
  report: (line) => process.stderr.write(`media: ${line}\n`),
});

const end = (): void => {
  const limit = setTimeout(() => server.closeAllConnections(), 2_000);
  server.close(() => {
    clearTimeout(limit);
    void heic.close().then(() => process.exit(0));
  });
  server.closeIdleConnections();
};
for (const signal of ["SIGTERM", "SIGINT"] as const) process.on(signal, end);
server.on("error", (error) => stop(error.message));
server.listen(port, host, () => {
  process.stdout.write(`${JSON.stringify({ ready: true, port: (server.address() as AddressInfo).port })}\n`);
});
