import type { IRegularForbiddenRuleType } from "dependency-cruiser";

/** The rooms of `src` that stand at the bottom and may see one another. */
const bottom = ["outcome", "units", "doubt", "statistics", "text"];
/** Rooms beside each other: what needs two of them is put together in `job`. */
const sideBySide = ["reading", "geometry", "tolerance", "water", "plumbing", "power", "photo"];
/** What each room of `src` may see besides itself. */
const sees: Readonly<Record<string, readonly string[]>> = {
  ...Object.fromEntries(bottom.map((room) => [room, bottom])),
  ...Object.fromEntries(sideBySide.map((room) => [room, bottom])),
  ledger: ["outcome"],
  job: [...bottom, ...sideBySide, "ledger"],
  warranty: ["outcome", "units", "ledger", "job"],
  keeping: [...bottom, "ledger", "job", "warranty"],
  record: [...bottom, ...sideBySide, "ledger", "job", "warranty"],
  proof: ["outcome", "text", "ledger", "job", "record"],
  quality: [...bottom, "reading", "ledger", "job", "warranty", "record"],
  wire: [...bottom, ...sideBySide, "ledger", "job", "warranty", "keeping", "record", "quality"],
  signature: ["proof"],
  screens: [...bottom, ...sideBySide, "ledger", "job", "warranty", "keeping", "record", "proof", "signature", "quality", "wire"],
};

/** The rooms of `src`. */
export const rooms: readonly string[] = Object.keys(sees);

/** The packages that each folder may import; a folder that is not listed may import none. */
const packages: Readonly<Record<string, readonly string[]>> = {
  "src/wire": ["zod"],
  "src/signature": ["jose"],
  "src/screens": [
    "@observablehq/plot",
    "@simplewebauthn/browser",
    "preact",
    "idb",
    "fflate",
    "pdfjs-dist",
    "qr",
    "workbox-expiration",
    "workbox-precaching",
    "workbox-routing",
    "workbox-strategies",
    "zxing-wasm",
  ],
  "functions/edge": ["@simplewebauthn/server", "hono", "jose", "csv-parse", "fflate"],
  "functions/shared": ["hono", "@aws-sdk/client-s3"],
  "functions/media": ["hono", "sharp", "exifr", "libheif-js", "zxing-wasm"],
  "functions/print": ["hono", "puppeteer", "@cantoo/pdf-lib", "@observablehq/plot", "linkedom", "nodemailer", "pdfjs-dist", "qr", "sharp"],
};

/** Packages that only some folders of infra and tests may import, with the reason. */
const narrow: readonly { readonly package: string; readonly where: readonly string[]; readonly reason: string }[] = [
  {
    package: "sharp",
    where: ["functions/media", "functions/print", "infra/demo", "infra/scenes", "infra/card-read", "infra/bench", "tests"],
    reason:
      "media alone decodes what phones send; print makes media's renditions smaller, the demo draws its own, scenes are stored as a phone stores them and read back, the bench measures beside it",
  },
  { package: "exifr", where: ["functions/media", "tests"], reason: "media is the only reader of EXIF" },
  {
    package: "puppeteer",
    where: ["functions/print", "infra/browser", "infra/pictures", "infra/screens", "infra/bench", "tests"],
    reason: "the browser belongs to print; tests, the README's pictures, those of the screens and the phone's bench drive one",
  },
  { package: "@aws-sdk/client-s3", where: ["functions/shared", "tests"], reason: "one S3 store for all functions, no back door beside it" },
  {
    package: "pdfjs-dist",
    where: ["functions/print", "infra/verify", "tests"],
    reason: "records are read back where they are sealed and where they are checked",
  },
  {
    package: "jose",
    where: ["functions/edge", "tests"],
    reason: "the edge seals, and src/signature alone checks",
  },
];

const referenceLibraries = [
  "@techstark/opencv-js",
  "canonicalize",
  "exif",
  "exif-parser",
  "exifreader",
  "fast-check",
  "geographiclib-geodesic",
  "ical.js",
  "jstat",
  "luxon",
  "simple-statistics",
];

/** Files that are started and never imported. */
const entryFiles = [
  "^functions/edge/(worker|local)\\.ts$",
  "^functions/(media|print)/main\\.ts$",
  "^functions/(media/(heic|cards)|print/words)-worker\\.ts$",
  "^infra/local/(start|demo|store|edge)\\.ts$",
  "^infra/build/(main|types|lint|imports|test)\\.ts$",
  "^infra/bench/main\\.ts$",
  "^infra/screens/main\\.ts$",
  "^infra/verify/main\\.ts$",
  "^infra/deploy/(main|serve|costs-table|only-needed|browser-folder)\\.ts$",
  "^infra/backup/(backup|return)\\.ts$",
  "^infra/shards/main\\.ts$",
  "^infra/simulate/(main|thread)\\.ts$",
  "^src/screens/(main\\.tsx?|sw\\.ts)$",
];

const escaped = (name: string): string => name.replaceAll(/[/.]/g, "\\$&");
const anyOf = (names: readonly string[]): string => `(${names.map(escaped).join("|")})`;
const inPackages = (names: readonly string[]): string => `(^|/)node_modules/${anyOf(names)}/`;
const npm = "(^|/)node_modules/";

type Rule = IRegularForbiddenRuleType;

const rule = (name: string, comment: string, from: Rule["from"], to: Rule["to"]): Rule => ({ name, comment, severity: "error", from, to });

const roomRules = rooms.map((room) =>
  rule(
    `room-${room}`,
    `src/${room} sees only itself${sees[room]?.length ? ` and ${sees[room].join(", ")}` : ""}.`,
    { path: `^src/${room}/` },
    { path: "^(src|functions|templates|infra)/", pathNot: `^src/${anyOf([room, ...(sees[room] ?? [])])}/` },
  ),
);

const packageRules = [
  ...rooms.map((room) => `src/${room}`),
  "functions/edge",
  "functions/shared",
  "functions/media",
  "functions/print",
  "templates",
].map((folder) =>
  rule(
    `packages-${folder.replace("/", "-")}`,
    `${folder} imports ${packages[folder]?.join(", ") ?? "no package"}.`,
    { path: `^${folder}/` },
    { path: npm, ...(packages[folder] ? { pathNot: inPackages(packages[folder]) } : {}) },
  ),
);

const narrowRules = narrow.map(({ package: name, where, reason }) =>
  rule(
    `package-${name.replaceAll(/[@/]/g, "")}-only-where-it-belongs`,
    `${name}: ${reason}.`,
    { path: "^(infra|tests)/", pathNot: `^${anyOf(where)}/` },
    { path: inPackages([name]) },
  ),
);

/** Every rule of the design's page on rooms and imports. */
export const importRules: readonly Rule[] = [
  ...roomRules,
  ...packageRules,
  ...narrowRules,
  rule(
    "wire-sees-types-only",
    "src/wire takes types from the other rooms, no code.",
    { path: "^src/wire/" },
    {
      path: "^src/",
      pathNot: "^src/wire/",
      dependencyTypesNot: ["type-only"],
    },
  ),
  rule(
    "phone-sees-no-quality",
    "The crew's phone, and what its pages share with others, know nothing of the owner's questions.",
    { path: "^src/screens/(field|parts)/" },
    { path: "^src/quality/" },
  ),
  rule(
    "no-platform",
    "The core, the edge, what the functions share and the templates run without Node.",
    { path: "^(src|functions/edge|functions/shared|templates)/" },
    {
      dependencyTypes: ["core"],
    },
  ),
  rule(
    "templates-see",
    "Templates see the record, the owner's answers, text, units and outcome.",
    { path: "^templates/" },
    {
      path: "^(src|functions|infra)/",
      pathNot: "^src/(record|quality|text|units|outcome)/",
    },
  ),
  rule(
    "templates-are-for-print-and-edge",
    "Only print and the edge see the templates.",
    { path: "^(functions|infra)/", pathNot: "^functions/(print|edge)/" },
    {
      path: "^templates/",
    },
  ),
  rule(
    "functions-stay-apart",
    "Functions never import one another; what they share lies in functions/shared.",
    { path: "^functions/([^/]+)/" },
    {
      path: "^functions/",
      pathNot: "^functions/($1|shared)/",
    },
  ),
  rule(
    "functions-see-no-screens",
    "Functions see the core and the wire, never the screens or infra.",
    { path: "^functions/" },
    { path: "^(src/screens|infra)/" },
  ),
  rule(
    "infra-starts-by-path",
    "infra starts functions by path and imports none of them, nor the screens.",
    { path: "^infra/", pathNot: "^infra/(bench|backup|deploy)/" },
    {
      path: "^(functions|src/screens)/",
    },
  ),
  rule(
    "bench-measures-media",
    "The bench measures media from inside, and enters no other function but what they share.",
    { path: "^infra/bench/" },
    {
      path: "^(functions|src/screens)/",
      pathNot: "^functions/(media|shared)/index\\.ts$",
    },
  ),
  rule(
    "backup-sees-the-store",
    "Backup, return and the trial of a container reach the store as the functions do, by what those share, and enter no function.",
    { path: "^infra/(backup|deploy)/" },
    {
      path: "^(functions|src/screens)/",
      pathNot: "^functions/shared/index\\.ts$",
    },
  ),
  rule(
    "scenes-know-nothing-of-us",
    "A scene is drawn by its own geometry: what it is there to check must not have made it. Chance comes from infra/chance.",
    { path: "^infra/scenes/" },
    { path: "^(src|functions|templates|infra)/", pathNot: "^infra/(scenes|chance)/" },
  ),
  rule(
    "nothing-imports-an-entry-file",
    "Entry files are started, never imported.",
    {},
    { path: entryFiles, dependencyTypesNot: ["type-only"] },
  ),
  rule("nothing-imports-tests", "Only tests import tests.", { pathNot: "^tests/" }, { path: "^tests/" }),
  rule(
    "reference-libraries-in-tests-only",
    "What our results are compared with must not make them.",
    { path: "^infra/" },
    {
      path: inPackages(referenceLibraries),
    },
  ),
  rule(
    "room-through-its-index",
    "A room of src is entered through its index.ts.",
    { path: "^(?!tests/)", pathNot: "^src/" },
    {
      path: "^src/[^/]+/.+\\.tsx?$",
      pathNot: "^src/[^/]+/index\\.ts$",
    },
  ),
  rule(
    "room-through-its-index-inside-src",
    "A room of src is entered through its index.ts.",
    { path: "^src/([^/]+)/" },
    {
      path: "^src/[^/]+/.+\\.tsx?$",
      pathNot: ["^src/$1/", "^src/[^/]+/index\\.ts$"],
    },
  ),
  rule(
    "folder-through-its-index",
    "A folder of functions or infra is entered through its index.ts.",
    { path: "^(functions|infra)/([^/]+)/" },
    {
      path: "^(functions|infra)/[^/]+/.+\\.ts$",
      pathNot: ["^$1/$2/", "^(functions|infra)/[^/]+/index\\.ts$"],
    },
  ),
  rule(
    "templates-through-their-index",
    "Templates are entered through index.ts.",
    { path: "^functions/" },
    {
      path: "^templates/.+\\.ts$",
      pathNot: ["^templates/index\\.ts$", "^templates/[^/]+/index\\.ts$"],
    },
  ),
  rule("no-cycles", "No import leads back to where it came from.", {}, { circular: true }),
  rule(
    "everything-resolves",
    "Every import names a file or a package that is there.",
    {},
    // what a package exports is not found with a query behind it; the app's build finds it, or breaks
    { couldNotResolve: true, pathNot: "^zxing-wasm/reader/zxing_reader\\.wasm\\?url$" },
  ),
];
