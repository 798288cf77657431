import { machineFrom, makeStore } from "#functions/shared/index.ts";
import { WarmBrowser } from "./browser.ts";
import { browserEnvironment } from "./environment.ts";
import { readFonts } from "./fonts.ts";
import { print } from "./print.ts";
import { mailServiceFrom, message } from "./sending.ts";
import { printServer } from "./server.ts";
import { oneAfterAnother } from "./turns.ts";
import { Unsealed } from "./unsealed.ts";

/** From when a page is open and its pictures have come to its last PDF. Own; a record of 60 pictures takes less than a second. */
const PAGE_LIMIT_MS = 60_000;
const CLOSE_LIMIT_MS = 3_000;
/** Own: a seal is asked for within a tenth of it. */
const PAUSE_MS = 300;

const machine = machineFrom("print", process, ["BROWSER_PATH"]);
const { report } = machine;
const store = makeStore(machine.store);
const browser = new WarmBrowser({
  path: machine.environment.BROWSER_PATH,
  environment: browserEnvironment(process.env),
  pageLimit: PAGE_LIMIT_MS,
  closeLimit: CLOSE_LIMIT_MS,
  report,
});
const mail = mailServiceFrom(process.env);
const fonts = await readFonts();
const inTurn = oneAfterAnother();
const unsealed = new Unsealed();
/** Opens the next page when nobody waits for the one before it. */
let pause: NodeJS.Timeout | undefined;
const busy = (): void => clearTimeout(pause);
const prepareSoon = (): void => {
  busy();
  pause = setTimeout(() => browser.prepare(), PAUSE_MS).unref();
};
const server = printServer({
  secret: machine.secret,
  now: Date.now,
  // Only the edge reads these answers, and it makes its own sentences from code and figures.
  say: ({ code, place }) => `${code} at ${place}`,
  ready: () => browser.ready(),
  print: (request) =>
    inTurn(() => {
      busy();
      return print(request, { store, browser, fonts, unsealed }).finally(prepareSoon);
    }),
  message: (asked) => message(asked, mail),
  sends: mail !== undefined,
  report,
});
// A browser that does not start now is tried again with the first document, so that print runs and can say what is wrong.
await browser.ready();
prepareSoon();
machine.serve(server, () => {
  busy();
  return browser.close();
});
