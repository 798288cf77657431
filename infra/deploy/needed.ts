import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join, normalize } from "node:path";

/** What a program is made of: source files by their path from the project's root, packages by their folder in `node_modules`. */
export interface Needed {
  readonly files: readonly string[];
  readonly packages: readonly string[];
}

const IMPORTS = [
  /^\s*(?:import|export)\s+(?!type\b)[^"';]*?\bfrom\s+"([^"]+)"/gm,
  /^\s*import\s+"([^"]+)"/gm,
  /\bimport\("([^"]+)"\)/g,
  /\bnew URL\("(\.[^"]+)",\s*import\.meta\.url\)/g,
  /\bimport\.meta\.resolve\([`"]([^`"]+)[`"]\)/g,
];

/** What a source file names: other files, packages, and files that it reads from beside itself. */
export const namedIn = (text: string): readonly string[] =>
  IMPORTS.flatMap((shape) => [...text.matchAll(shape)].map(([, name = ""]) => name));

const ownPrefixes: Readonly<Record<string, string>> = {
  "#core/": "src/",
  "#functions/": "functions/",
  "#templates/": "templates/",
  "#infra/": "infra/",
};

const packageOf = (name: string): string =>
  name
    .split("/")
    .slice(0, name.startsWith("@") ? 2 : 1)
    .join("/");

/** The file of the project that a name means, from its root; undefined for a package. */
function fileOf(name: string, from: string): string | undefined {
  if (name.startsWith(".")) return normalize(join(dirname(from), name));
  const prefix = Object.keys(ownPrefixes).find((one) => name.startsWith(one));
  return prefix === undefined ? undefined : `${ownPrefixes[prefix]}${name.slice(prefix.length)}`;
}

interface Locked {
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly optionalDependencies?: Readonly<Record<string, string>>;
  readonly peerDependencies?: Readonly<Record<string, string>>;
  readonly dev?: boolean;
}

/** Where Node finds a package from a folder of `node_modules`: its own, else the next one up. */
function placeOf(name: string, from: string, locked: Readonly<Record<string, Locked>>): string | undefined {
  for (let folder = from; ; folder = folder.slice(0, Math.max(0, folder.lastIndexOf("/node_modules/")))) {
    const place = folder === "" ? `node_modules/${name}` : `${folder}/node_modules/${name}`;
    if (locked[place] !== undefined) return place;
    if (folder === "") return undefined;
  }
}

/** These packages with all that they need, as the lock file has them. @throws where one is in it for development alone, or not at all */
export function packagesOf(
  names: readonly string[],
  locked: Readonly<Record<string, Locked>>,
  isThere: (place: string) => boolean,
): readonly string[] {
  const found = new Set<string>();
  const take = (place: string): void => {
    if (found.has(place)) return;
    found.add(place);
    const { dependencies = {}, optionalDependencies = {}, peerDependencies = {} } = locked[place] ?? {};
    for (const name of Object.keys({ ...peerDependencies, ...dependencies, ...optionalDependencies })) {
      const inner = placeOf(name, place, locked);
      // one that is not for this machine is in the lock file, and was not installed
      if (inner !== undefined && isThere(inner)) take(inner);
    }
  };
  for (const name of names) {
    const place = `node_modules/${name}`;
    const one = locked[place];
    if (one === undefined) throw new Error(`${name} is imported and not in the lock file`);
    if (one.dev === true) throw new Error(`${name} is imported and is there for development alone`);
    take(place);
  }
  return [...found].sort();
}

/** All files and packages that are reached from these files by what they import. @throws where one is not there */
export async function neededBy(entries: readonly string[], root: string): Promise<Needed> {
  const isBuiltin = createRequire(import.meta.url)("node:module").isBuiltin as (name: string) => boolean;
  const files = new Set<string>();
  const packages = new Set<string>();
  const waiting = [...entries];
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    if (files.has(file)) continue;
    if (!existsSync(join(root, file))) throw new Error(`${file} is needed and not there`);
    files.add(file);
    if (!/\.(ts|mjs|js)$/.test(file)) continue;
    for (const name of namedIn(await readFile(join(root, file), "utf8"))) {
      const own = fileOf(name, file);
      if (own !== undefined) waiting.push(own);
      else if (!isBuiltin(name)) packages.add(packageOf(name));
    }
  }
  const { packages: locked } = JSON.parse(await readFile(join(root, "package-lock.json"), "utf8")) as { packages: Record<string, Locked> };
  return {
    files: [...files].sort(),
    packages: packagesOf([...packages], locked, (place) => existsSync(join(root, place))),
  };
}
