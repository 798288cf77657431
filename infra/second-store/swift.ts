import { type ChildProcess, execFile, spawn } from "node:child_process";
import { access, copyFile, mkdir } from "node:fs/promises";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const FOLDER = "/tmp/asburied-swift";
const run = promisify(execFile);
const packages = ["swift-proxy", "swift-account", "swift-container", "swift-object", "memcached"];
const script = fileURLToPath(new URL("./swift.sh", import.meta.url));
/** The Debian that debootstrap makes is kept here for the next time; `SECOND_STORE_DIR` names another place. */
const root = process.env.SECOND_STORE_DIR ?? join(tmpdir(), "asburied-second-store");

export interface Swift {
  readonly ok: true;
  readonly endpoint: string;
  readonly version: string;
  /** What its servers say, a file. */
  readonly log: string;
  stop(): Promise<void>;
}

interface Starting {
  readonly secret: string;
  readonly say: (line: string) => void;
}

const has = async (program: string): Promise<boolean> =>
  run("/bin/sh", ["-c", `PATH=$PATH:/usr/sbin command -v ${program}`]).then(
    () => true,
    () => false,
  );

/**
 * Swift writes into a file without a name and links it to its name by way of /proc; where that is missing it answers that it took an
 * upload and has nothing. Mounted for its servers alone: nothing outside sees it, and it ends with them.
 */
const WITH_PROC = 'mount -t proc proc "$0/proc" && exec chroot "$0" "$@"';

/** Runs beside the machine's own system where Swift is installed in it, otherwise in a Debian of its own in a folder. */
export async function startSwift({ secret, say }: Starting): Promise<Swift | { readonly ok: false; readonly why: string }> {
  const installed = await has("swift-proxy-server");
  if (process.getuid?.() !== 0) return { ok: false, why: "Swift's servers are started as root here; run it as root." };
  if (!installed) {
    if (!(await has("debootstrap"))) return { ok: false, why: `Install ${packages.join(", ")}, or debootstrap, and run it again.` };
    const made = await ownDebian(say).catch((error: Error) => error);
    if (made instanceof Error) return { ok: false, why: `No Debian could be made in ${root}: ${made.message.split("\n")[0]}` };
  }
  const inside = installed ? [] : ["unshare", "--mount", "/bin/sh", "-c", WITH_PROC, root];
  const at = installed ? script : "/swift.sh";
  if (!installed) await copyFile(script, join(root, "swift.sh"));
  const port = await freePort();
  const [program = "", ...rest] = [...inside, at, FOLDER, String(port), secret];
  const child = spawn(program, rest, { stdio: ["pipe", "inherit", "inherit"] });
  const version = await versionIn(installed ? [] : ["chroot", root]);
  const log = join(installed ? "/" : root, FOLDER, "log");
  return { ok: true, endpoint: `http://127.0.0.1:${port}`, version, log, stop: () => ended(child) };
}

async function ownDebian(say: (line: string) => void): Promise<void> {
  const ready = await access(join(root, ".ready")).then(
    () => true,
    () => false,
  );
  if (ready) return;
  say(`making a Debian with ${packages.join(", ")} in ${root} (about a minute, 700 MB)`);
  const { stdout: release } = await run("/bin/sh", ["-c", '. /etc/os-release && printf %s "$VERSION_CODENAME"']);
  const { stdout: mirror } = await run("/bin/sh", [
    "-c",
    "awk '/^URIs:/{print $2; exit}' /etc/apt/sources.list.d/debian.sources 2>/dev/null || true",
  ]);
  const large = { maxBuffer: 64_000_000 };
  await mkdir(root, { recursive: true });
  const from = mirror.trim() === "" ? [] : [mirror.trim()];
  await run("debootstrap", ["--variant=minbase", "--include=ca-certificates", release, root, ...from], large);
  for (const file of ["/etc/resolv.conf", "/etc/ssl/certs/ca-certificates.crt"])
    await copyFile(file, join(root, file)).catch(() => undefined);
  const install = `apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends ${packages.join(" ")}`;
  await run("chroot", [root, "/bin/sh", "-c", `${install} && touch /.ready`], large);
}

async function versionIn(inside: readonly string[]): Promise<string> {
  const [program = "", ...rest] = [...inside, "dpkg-query", "-W", "-f", `\${Version}`, "swift-proxy"];
  const { stdout } = await run(program, rest).catch(() => ({ stdout: "of an unknown version" }));
  return stdout.trim();
}

/** The first of five free ports in a row; nothing holds them until Swift does. */
async function freePort(): Promise<number> {
  for (let port = 18_080; port < 28_000; port += 10) {
    const free = await Promise.all([0, 1, 2, 3, 4].map((further) => isFree(port + further)));
    if (free.every(Boolean)) return port;
  }
  throw new Error("no five free ports in a row between 18080 and 28000");
}

const isFree = (port: number): Promise<boolean> =>
  new Promise((resolve) => {
    const server = createServer();
    server.once("error", () => resolve(false));
    server.listen(port, "127.0.0.1", () => server.close(() => resolve(true)));
  });

/** The end of its standard input ends it and all that it started. */
async function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return;
  const gone = new Promise((resolve) => child.once("exit", resolve));
  child.stdin?.end();
  await gone;
}
