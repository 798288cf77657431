import { chmod, cp, readdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { browser } from "../browser/index.ts";

/**
 * `node infra/deploy/browser-folder.ts TO PLACE`, in print's build: the unpacked browser with its libraries and fonts into a folder,
 * ready to be started from PLACE by whoever runs there. As unpacked only its owner may start it, and its fonts lie elsewhere.
 */
const [to, place] = process.argv.slice(2);
if (to === undefined || place === undefined) {
  console.error("Say where to, and where it will lie: node infra/deploy/browser-folder.ts TO PLACE");
  process.exit(2);
}
const { command, fontConfiguration } = await browser();
if (fontConfiguration === undefined) throw new Error("BROWSER names a browser of this machine: the image takes the one of the package.");
const from = command.slice(0, command.lastIndexOf("/"));
await cp(from, to, { recursive: true, filter: (source) => !source.includes("fonts-cache") });
// what fontconfig works out is kept where a container may write
await writeFile(
  join(to, "fonts/fonts.conf"),
  `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>${place}/fonts/fonts</dir><cachedir>/tmp/fontconfig</cachedir></fontconfig>
`,
);
await chmod(to, 0o755);
for (const entry of await readdir(to, { recursive: true, withFileTypes: true })) {
  const path = join(entry.parentPath, entry.name);
  const isRun = entry.isDirectory() || entry.name === "chromium";
  if (!entry.isSymbolicLink()) await chmod(path, isRun ? 0o755 : 0o644);
}
console.log(`the browser, to be started as ${place}/chromium`);
