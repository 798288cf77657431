import { cp, mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { rooms } from "#infra/build/imports/index.ts";
import { project } from "./project.ts";

/** One file that breaks exactly one import rule. */
export interface Fault {
  readonly rule: string;
  readonly file: string;
  readonly text: string;
}

const packagesUsed = [
  "zod",
  "preact",
  "idb",
  "hono",
  "@aws-sdk/client-s3",
  "sharp",
  "exifr",
  "libheif-js",
  "puppeteer",
  "jose",
  "pdfjs-dist",
  "@cantoo/pdf-lib",
  "luxon",
  "lodash",
];

/** The first room that a room may not see. */
const forbiddenRoom: Readonly<Record<string, string>> = {
  outcome: "ledger",
  units: "reading",
  doubt: "job",
  statistics: "geometry",
  text: "reading",
  reading: "tolerance",
  geometry: "reading",
  tolerance: "geometry",
  water: "plumbing",
  plumbing: "power",
  power: "photo",
  photo: "ledger",
  ledger: "units",
  job: "record",
  warranty: "record",
  keeping: "record",
  record: "wire",
  proof: "wire",
  signature: "record",
  quality: "wire",
};

const roomFaults: readonly Fault[] = rooms.map((room) => ({
  rule: `room-${room}`,
  file: `src/${room}/planted.ts`,
  text:
    room === "wire"
      ? 'import type { main } from "../screens/index.ts";\nexport type Planted = typeof main;\n'
      : room === "screens"
        ? 'import { entry } from "#functions/edge/index.ts";\nexport const planted = entry;\n'
        : `import { entry } from "../${forbiddenRoom[room]}/index.ts";\nexport const planted = entry;\n`,
}));

const packageFaults: readonly Fault[] = [
  ...rooms.map((room) => [`src/${room}`, room === "screens" ? "zod" : room === "wire" ? "idb" : "zod"] as const),
  ["functions/edge", "sharp"] as const,
  ["functions/shared", "zod"] as const,
  ["functions/media", "puppeteer"] as const,
  ["functions/print", "exifr"] as const,
  ["templates", "hono"] as const,
].map(([folder, name]) => ({
  rule: `packages-${folder.replace("/", "-")}`,
  file: `${folder}/planted-package.ts`,
  text: `import { entry } from "${name}";\nexport const planted = entry;\n`,
}));

const narrowFaults: readonly Fault[] = ["sharp", "exifr", "puppeteer", "@aws-sdk/client-s3", "jose", "pdfjs-dist"].map((name) => ({
  rule: `package-${name.replaceAll(/[@/]/g, "")}-only-where-it-belongs`,
  file: `infra/local/planted-${name.replaceAll(/[@/]/g, "")}.ts`,
  text: `import { entry } from "${name}";\nexport const planted = entry;\n`,
}));

const one = (rule: string, file: string, from: string): Fault => ({
  rule,
  file,
  text: `import { entry } from "${from}";\nexport const planted = entry;\n`,
});

/** A fault for every rule; the rules' own list is compared with this one. */
export const faults: readonly Fault[] = [
  ...roomFaults,
  ...packageFaults,
  ...narrowFaults,
  one("wire-sees-types-only", "src/wire/planted-code.ts", "../job/index.ts"),
  one("phone-sees-no-quality", "src/screens/field/planted-quality.ts", "../../quality/index.ts"),
  one("no-platform", "src/job/planted-node.ts", "node:fs"),
  one("templates-see", "templates/planted-room.ts", "#core/job/index.ts"),
  one("templates-are-for-print-and-edge", "functions/media/planted-template.ts", "#templates/index.ts"),
  one("functions-stay-apart", "functions/edge/planted-function.ts", "../print/index.ts"),
  one("functions-see-no-screens", "functions/edge/planted-screens.ts", "#core/screens/index.ts"),
  one("infra-starts-by-path", "infra/local/planted-function.ts", "#functions/media/index.ts"),
  one("bench-measures-media", "infra/bench/planted-function.ts", "#functions/print/index.ts"),
  one("backup-sees-the-store", "infra/backup/planted-function.ts", "#functions/print/index.ts"),
  one("scenes-know-nothing-of-us", "infra/scenes/planted-geometry.ts", "#core/geometry/index.ts"),
  one("nothing-imports-an-entry-file", "functions/edge/planted-entry.ts", "./worker.ts"),
  one("nothing-imports-tests", "functions/print/planted-tests.ts", "../../tests/helpers/planted.ts"),
  one("reference-libraries-in-tests-only", "infra/demo/planted-reference.ts", "luxon"),
  one("room-through-its-index", "functions/print/planted-inside.ts", "#core/job/inside.ts"),
  one("room-through-its-index-inside-src", "src/record/planted-inside.ts", "../job/inside.ts"),
  one("folder-through-its-index", "functions/media/planted-inside.ts", "../shared/inside.ts"),
  one("templates-through-their-index", "functions/print/planted-template.ts", "#templates/inside.ts"),
  {
    rule: "no-cycles",
    file: "src/units/planted-cycle.ts",
    text: 'import { there } from "./planted-way-back.ts";\nexport const here = there;\n',
  },
  one("everything-resolves", "functions/print/planted-missing.ts", "./not-there.ts"),
];

/** Files that break nothing, for the faults to point at. */
const sound: Readonly<Record<string, string>> = {
  ...Object.fromEntries(rooms.map((room) => [`src/${room}/index.ts`, "export const entry = 1;\n"])),
  "src/screens/index.ts": "export const entry = 1;\nexport const main = 1;\n",
  "src/job/inside.ts": "export const entry = 1;\n",
  "src/units/planted-way-back.ts": 'import { here } from "./planted-cycle.ts";\nexport const there = here;\n',
  "functions/edge/index.ts": "export const entry = 1;\n",
  "functions/edge/worker.ts": "export const entry = 1;\n",
  "functions/media/index.ts": "export const entry = 1;\n",
  "functions/print/index.ts": "export const entry = 1;\n",
  "functions/shared/index.ts": "export const entry = 1;\n",
  "functions/shared/inside.ts": "export const entry = 1;\n",
  "templates/index.ts": "export const entry = 1;\n",
  "templates/inside.ts": "export const entry = 1;\n",
  "tests/helpers/planted.ts": "export const entry = 1;\n",
  // what is allowed, so that a rule that forbids everything is found out
  "src/record/allowed.ts": 'import { entry } from "../job/index.ts";\nexport const allowed = entry;\n',
  "src/wire/allowed.ts": 'import type { entry } from "../job/index.ts";\nexport type Allowed = typeof entry;\n',
  "src/wire/allowed-package.ts": 'import { entry } from "zod";\nexport const allowed = entry;\n',
  "functions/print/allowed.ts":
    'import { entry } from "#templates/index.ts";\nimport { entry as shared } from "../shared/index.ts";\nimport { entry as puppeteer } from "puppeteer";\nexport const allowed = [entry, shared, puppeteer];\n',
};

/** A tree in a temporary folder with every planted fault; `remove` takes it away again. */
export const plantedTree = async (): Promise<{ readonly root: string; readonly remove: () => Promise<void> }> => {
  const root = await mkdtemp(join(tmpdir(), "asburied-planted-"));
  await cp(join(project, "package.json"), join(root, "package.json"));
  const files = { ...sound, ...Object.fromEntries(faults.map(({ file, text }) => [file, text])) };
  for (const name of packagesUsed) {
    files[`node_modules/${name}/package.json`] = JSON.stringify({ name, version: "1.0.0", type: "module", main: "index.js" });
    files[`node_modules/${name}/index.js`] = "export const entry = 1;\n";
  }
  for (const [file, text] of Object.entries(files)) {
    await mkdir(dirname(join(root, file)), { recursive: true });
    await writeFile(join(root, file), text);
  }
  return { root, remove: () => rm(root, { recursive: true, force: true }) };
};
