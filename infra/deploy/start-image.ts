import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { existsSync, lstatSync, mkdirSync, readlinkSync, symlinkSync } from "node:fs";
import { link, mkdir } from "node:fs/promises";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { type Image, linked } from "./image.ts";

/** A container's program that runs. */
export interface Started {
  readonly port: number;
  /** Whether its files were read-only, its root its own and its user the image's. */
  readonly isApart: boolean;
  /** Milliseconds from its start until it listened. */
  readonly took: number;
  /** Sends SIGTERM. Gives how it ended: 'exit 0', or the signal that was needed after five seconds. */
  stop(): Promise<string>;
}

/** Mounts need root and a kernel that gives name spaces; a container may have neither. */
export const canStandApart = (): boolean =>
  process.platform === "linux" && process.getuid?.() === 0 && spawnSync("unshare", ["-m", "true"], { stdio: "ignore" }).status === 0;

/** What a slim image has besides: taken from a Debian's own root, so that the program finds what it would find there. */
const ofSystem = ["bin", "lib", "lib64", "sbin", "usr", "etc", "dev", "proc"];

/** Read-only all over but for /tmp, in the root of the image, as its user, without any right of root's. */
const APART = `set -e
root=$1; base=$2; uid=$3; gid=$4; shift 4
mount --make-rprivate /
mount --bind "$root" "$root"
for one in ${ofSystem.join(" ")}; do
  if [ ! -L "$root/$one" ] && [ -d "$root/$one" ]; then case $one in dev | proc) from=/$one ;; *) from=$base/$one ;; esac; mount --rbind "$from" "$root/$one"; mount -o remount,bind,ro "$root/$one"; fi
done
mount -o remount,bind,ro "$root"
mount -t tmpfs -o mode=1777 tmpfs "$root/tmp"
exec chroot "$root" setpriv --reuid "$uid" --regid "$gid" --clear-groups --no-new-privs --inh-caps=-all --bounding-set=-all "$@"
`;

function placesIn(root: string, base: string): void {
  for (const name of ofSystem) {
    const there = join(base, name);
    if (!existsSync(there) || existsSync(join(root, name))) continue;
    if (lstatSync(there).isSymbolicLink()) symlinkSync(readlinkSync(there), join(root, name));
    else mkdirSync(join(root, name));
  }
  mkdirSync(join(root, "tmp"), { recursive: true });
}

const ended = (child: ChildProcess): Promise<string> =>
  new Promise((resolve) => child.once("exit", (code, signal) => resolve(signal ?? `exit ${code}`)));

/**
 * Starts what an image starts, apart from this machine's files where that can be done, else in its folder as whoever asks.
 * @param base the root of the system that lends it what a slim image has
 * @throws where it does not listen within two minutes, with what it said
 */
export async function startImage(image: Image, handed: Readonly<Record<string, string>>, base = "/"): Promise<Started> {
  const isApart = canStandApart();
  const environment = { ...image.environment, ...handed };
  const [program = "", ...words] = image.command;
  let command: readonly string[];
  let child: ChildProcess;
  const began = performance.now();
  if (isApart) {
    placesIn(image.root, base);
    await mkdir(join(image.root, "node"), { recursive: true });
    await link(process.execPath, join(image.root, "node/node")).catch(() => linked(process.execPath, join(image.root, "node/node")));
    const [uid = "0", gid = uid] = image.user.split(":");
    const pairs = Object.entries({ ...environment, PATH: "/node:/usr/bin:/bin" }).map(([name, value]) => `${name}=${value}`);
    command = ["unshare", "-m", "sh", "-c", APART, "apart", image.root, base, uid, gid];
    command = [...command, "env", "-i", "-C", image.folder, ...pairs, program, ...words];
    child = spawn(command[0] as string, command.slice(1), { stdio: ["ignore", "pipe", "pipe"] });
  } else {
    const at = (value: string): string => (value.startsWith("/") && existsSync(join(image.root, value)) ? join(image.root, value) : value);
    const env = Object.fromEntries(Object.entries(environment).map(([name, value]) => [name, at(value)]));
    const path = process.env.PATH ?? "/usr/bin:/bin";
    child = spawn(program === "node" ? process.execPath : program, words, {
      cwd: join(image.root, image.folder),
      env: { ...env, PATH: path },
      stdio: ["ignore", "pipe", "pipe"],
    });
  }
  const end = ended(child);
  const said: string[] = [];
  const port = await new Promise<number>((resolve, reject) => {
    const limit = setTimeout(() => reject(new Error(`it did not listen within 120 s: ${said.slice(-5).join(" ")}`)), 120_000);
    const hear = (line: string): void => {
      said.push(line);
      const listening = /^\{"ready":true,"port":(\d+)\}$/.exec(line);
      if (listening === null) return;
      clearTimeout(limit);
      resolve(Number(listening[1]));
    };
    if (child.stdout) createInterface({ input: child.stdout }).on("line", hear);
    if (child.stderr) createInterface({ input: child.stderr }).on("line", hear);
    child.once("error", reject);
    child.once("close", (code, signal) => {
      clearTimeout(limit);
      reject(new Error(`it ended (${signal ?? code}) before it listened: ${said.slice(-5).join(" ")}`));
    });
  }).catch((error: unknown) => {
    child.kill("SIGKILL");
    throw error;
  });
  return {
    port,
    isApart,
    took: performance.now() - began,
    stop: async () => {
      child.kill("SIGTERM");
      const late = setTimeout(() => child.kill("SIGKILL"), 5_000);
      const how = await end;
      clearTimeout(late);
      return how;
    },
  };
}
