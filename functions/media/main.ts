import { Readable } from "node:stream";
import type { ReadableStream as NodeWebStream } from "node:stream/web";
import { machineFrom, makeStore } from "#functions/shared/index.ts";
import { blurPhoto } from "./blur.ts";
import { CardReader } from "./cards.ts";
import { gate } from "./gate.ts";
import { HeicDecoder } from "./heic.ts";
import { drawMark } from "./mark.ts";
import { readPhoto } from "./read.ts";
import { mediaServer } from "./server.ts";

/** Photos in work at a time; each can take some 200 MB. Own. */
const AT_A_TIME = 2;

const machine = machineFrom("media", process);
const store = makeStore({ ...machine.store, fromWeb: (stream) => Readable.fromWeb(stream as NodeWebStream<Uint8Array>) });
const threads = { heic: new HeicDecoder(), cards: new CardReader() };
const oneOfFew = gate(AT_A_TIME);
const server = mediaServer({
  secret: machine.secret,
  now: Date.now,
  // Only the edge reads these answers, and it makes its own sentences from code and figures.
  say: ({ code, place }) => `${code} at ${place}`,
  read: (company, sha) => oneOfFew(() => readPhoto(company, sha, store, threads)),
  blur: (asked) => oneOfFew(() => blurPhoto(asked, store)),
  mark: (company, sha) => oneOfFew(() => drawMark(company, sha, store)),
  report: machine.report,
});
machine.serve(server, async () => {
  await Promise.all([threads.heic.close(), threads.cards.close()]);
});
