import "../node-version.mjs";
import { fileURLToPath } from "node:url";
import { startUntilStopped } from "../local/index.ts";

/**
 * `npm run serve`: the whole program on one's own server, behind something that speaks TLS (`infra/deploy/README.md`). The worker as it is
 * deployed, without the demo company; `ORIGIN` is the address that browsers use, `PORT` where the proxy reaches it, `ASBURIED_DATA` the folder.
 */
const origin = process.env.ORIGIN ?? "";
const port = Number(process.env.PORT ?? 8787);
if (!/^https:\/\/[a-z0-9.-]+(:\d{1,5})?$/.test(origin)) {
  console.error("Say where browsers will find it: ORIGIN=https://name, without a slash at the end. Sign-in is bound to that address.");
  process.exit(2);
}
if (!(Number.isInteger(port) && port > 0 && port < 65_536)) {
  console.error("PORT is no port.");
  process.exit(2);
}
const directory = process.env.ASBURIED_DATA ?? fileURLToPath(new URL("../../data", import.meta.url));
const say = (line: string): void => console.log(line);

const { stack } = await startUntilStopped({ directory, ports: { edge: port }, origin, demoLinks: false, log: say }, () => {});
if (new URL(stack.edge).port !== String(port)) {
  // the proxy would go on asking the port that somebody else has
  console.error(`Port ${port} is taken.`);
  await stack.stop();
  process.exit(1);
}
say(
  `Listening on ${stack.edge} for ${origin}. Everything is kept in ${directory}; what the operator opens a company with is in its secrets.json.`,
);
