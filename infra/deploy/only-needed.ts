import { cp, mkdir } from "node:fs/promises";
import { dirname, join } from "node:path";
import { neededBy } from "./needed.ts";

/**
 * `node infra/deploy/only-needed.ts TO ENTRY ...`, in a container's build: copies what these files are made of, and nothing else, into
 * a folder. The program's own packages bring a bundler, a local platform and a test runner along; none of that goes into an image.
 */
const [to, ...entries] = process.argv.slice(2);
if (to === undefined || entries.length === 0) {
  console.error("Say where to, and of which files: node infra/deploy/only-needed.ts TO ENTRY ...");
  process.exit(2);
}
const root = process.cwd();
const { files, packages } = await neededBy(entries, root);
const inside = new Set(packages);
for (const file of [...files, "package.json"]) {
  await mkdir(dirname(join(to, file)), { recursive: true });
  await cp(join(root, file), join(to, file));
}
for (const place of packages) {
  // a package inside another one is copied for itself, where it is needed
  const filter = (source: string): boolean => {
    const path = source.slice(root.length + 1);
    // for whoever reads the program, not for what runs it
    if (/\.(map|d\.[cm]?ts)$/.test(path)) return false;
    const last = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)/.exec(path)?.[1] ?? path;
    return last === place || inside.has(last);
  };
  await cp(join(root, place), join(to, place), { recursive: true, dereference: false, filter });
}
console.log(`${files.length} files, ${packages.length} packages`);
