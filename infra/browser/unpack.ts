import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdir, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { promisify } from "node:util";

/** Where the unpacked browser lies: the program, its libraries (undefined for one of the machine's own) and its fonts. */
export interface Browser {
  readonly command: string;
  readonly libraries: string | undefined;
  readonly fontConfiguration: string | undefined;
}

const archives = ["chromium.br", "fonts.tar.br", "swiftshader.tar.br", "al2023.tar.br"];
const packageEntry = createRequire(import.meta.url).resolve("@sparticuz/chromium");
const packageFolder = dirname(dirname(packageEntry));
const cache = fileURLToPath(new URL("../../node_modules/.cache/asburied-browser/", import.meta.url));

// The archive's own fonts.conf names folders under /tmp; without one that holds, a bare machine prints pages without any text.
const fontsConf = (fonts: string, fontsCache: string): string =>
  `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>${fonts}</dir><cachedir>${fontsCache}</cachedir></fontconfig>
`;

const here = (folder: string): Browser => ({
  command: join(folder, "chromium"),
  libraries: join(folder, "al2023", "lib"),
  fontConfiguration: join(folder, "fonts"),
});

/** `inflate` writes to the system's temporary folder and nowhere else, so it works in a process of its own for which that is moved. */
const inflateInto = async (folder: string): Promise<void> => {
  const files = archives.map((archive) => join(packageFolder, "bin", archive));
  const program = `import { inflate } from ${JSON.stringify(pathToFileURL(packageEntry).href)};
await Promise.all(${JSON.stringify(files)}.map((file) => inflate(file)));`;
  await promisify(execFile)(process.execPath, ["--input-type=module", "--eval", program], { env: { ...process.env, TMPDIR: folder } });
};

const unpack = async (folder: string): Promise<void> => {
  const part = `${folder}.${process.pid}.part`;
  await rm(part, { recursive: true, force: true });
  await mkdir(part, { recursive: true });
  await inflateInto(part);
  await mkdir(join(part, "fonts"), { recursive: true });
  await writeFile(join(part, "fonts", "fonts.conf"), fontsConf(join(folder, "fonts", "fonts"), join(folder, "fonts-cache")));
  try {
    await rename(part, folder);
  } catch (error) {
    // another process was first: its folder is whole, because a folder gets its name only then
    if (!existsSync(folder)) throw error;
    await rm(part, { recursive: true, force: true });
  }
};

let unpacking: Promise<Browser> | undefined;

const unpackOnce = async (): Promise<Browser> => {
  const { version } = JSON.parse(await readFile(join(packageFolder, "package.json"), "utf8")) as { version: string };
  const folder = join(cache, `${version}-${process.arch}`);
  if (!existsSync(folder)) {
    await mkdir(cache, { recursive: true });
    await unpack(folder);
    for (const other of await readdir(cache)) {
      // parts of a process that ended half way; one still being written belongs to a living process
      const pid = Number(/\.(\d+)\.part$/.exec(other)?.[1]);
      if (pid && !isAlive(pid)) await rm(join(cache, other), { recursive: true, force: true });
    }
  }
  return here(folder);
};

const isAlive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};

/**
 * The browser for printing and for the browser tests: the one named by `BROWSER` in the environment, else the one from npm,
 * unpacked once into a versioned folder (about two seconds).
 * @throws when the archive cannot be unpacked, with the system's reason.
 */
export const browser = async (): Promise<Browser> => {
  const own = process.env.BROWSER;
  if (own) return { command: own, libraries: undefined, fontConfiguration: undefined };
  unpacking ??= unpackOnce();
  return unpacking;
};
