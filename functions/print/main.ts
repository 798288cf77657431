import type { AddressInfo } from "node:net";
import { makeStore, readEnvironment, readPort, tooOldNode } from "#functions/shared/index.ts";
import { WarmBrowser } from "./browser.ts";
import { browserEnvironment } from "./environment.ts";
import { readFonts } from "./fonts.ts";
import { print } from "./print.ts";
import { printServer } from "./server.ts";
import { oneAfterAnother } from "./turns.ts";

/** From the opening of a page to its PDF. Own; a record of 60 pictures takes under one second. */
const PAGE_LIMIT_MS = 60_000;
const CLOSE_LIMIT_MS = 3_000;

const stop = (sentence: string): never => {
  process.stderr.write(`print: ${sentence}\n`);
  process.exit(1);
};
const old = tooOldNode(process.version);
if (old) stop(old);
const environment = readEnvironment(process.env, [
  "PRINT_PORT",
  "SERVICE_SECRET",
  "STORE_ENDPOINT",
  "STORE_REGION",
  "STORE_BUCKET",
  "STORE_ACCESS_KEY",
  "STORE_SECRET_KEY",
  "BROWSER_PATH",
]);
const value = environment.ok ? environment.value : stop(`missing in the environment: ${environment.missing.join(", ")}`);
const port = readPort(value.PRINT_PORT) ?? stop("PRINT_PORT is no port");
const host = process.env.PRINT_HOST ?? "127.0.0.1";
const report = (line: string): void => void process.stderr.write(`print: ${line}\n`);

const store = makeStore({
  endpoint: value.STORE_ENDPOINT,
  region: value.STORE_REGION,
  bucket: value.STORE_BUCKET,
  accessKeyId: value.STORE_ACCESS_KEY,
  secretAccessKey: value.STORE_SECRET_KEY,
});
const browser = new WarmBrowser({
  path: value.BROWSER_PATH,
  environment: browserEnvironment(process.env),
  pageLimit: PAGE_LIMIT_MS,
  closeLimit: CLOSE_LIMIT_MS,
  report,
});
const fonts = await readFonts();
const inTurn = oneAfterAnother();
const server = printServer({
  secret: value.SERVICE_SECRET,
  now: Date.now,
  // Only the edge reads these answers, and it makes its own sentences from code and figures.
  say: ({ code, place }) => `${code} at ${place}`,
  ready: () => browser.ready(),
  print: (request) => inTurn(() => print(request, { store, browser, fonts })),
  report,
});

const end = (): void => {
  const limit = setTimeout(() => server.closeAllConnections(), 2_000);
  server.close(() => {
    clearTimeout(limit);
    void browser.close().then(() => process.exit(0));
  });
  server.closeIdleConnections();
};
for (const signal of ["SIGTERM", "SIGINT"] as const) process.on(signal, end);
server.on("error", (error) => stop(error.message));
// A browser that does not start now is tried again with the first record, so that print runs and can say what is wrong.
await browser.ready();
server.listen(port, host, () => {
  process.stdout.write(`${JSON.stringify({ ready: true, port: (server.address() as AddressInfo).port })}\n`);
});
