import "../node-version.mjs";
import { startStore } from "./store-server.ts";

/** The local store as a process of its own. Says `{"ready":true,"port":N}` when it listens, ends in order on SIGTERM. */
const stop = (sentence: string): never => {
  process.stderr.write(`store: ${sentence}\n`);
  process.exit(1);
};

const { STORE_DIRECTORY = "", STORE_PORT = "", STORE_ACCESS_KEY = "", STORE_SECRET_KEY = "", STORE_BUCKET = "" } = process.env;
const wanted = { STORE_DIRECTORY, STORE_PORT, STORE_ACCESS_KEY, STORE_SECRET_KEY, STORE_BUCKET };
const missing = Object.entries(wanted).filter(([, value]) => value.trim() === "");
if (missing.length > 0) stop(`missing in the environment: ${missing.map(([name]) => name).join(", ")}`);
if (!/^\d{1,5}$/.test(STORE_PORT) || Number(STORE_PORT) > 65_535) stop("STORE_PORT is no port");

const store = await startStore({
  directory: STORE_DIRECTORY,
  port: Number(STORE_PORT),
  accessKeyId: STORE_ACCESS_KEY,
  secretAccessKey: STORE_SECRET_KEY,
  bucket: STORE_BUCKET,
}).catch((thrown: Error) => stop(thrown.message));
for (const signal of ["SIGTERM", "SIGINT"] as const) process.on(signal, () => store.close().then(() => process.exit(0)));
process.stdout.write(`${JSON.stringify({ ready: true, port: store.port })}\n`);
