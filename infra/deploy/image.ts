import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { cp, link, mkdir, readdir, symlink } from "node:fs/promises";
import { dirname, join } from "node:path";
import { isIgnored, pairsOf, stagesOf, wordsOf } from "./dockerfile.ts";

/** What a Dockerfile comes to on this machine: the files of its last stage, and how it is started. */
export interface Image {
  /** Folder that stands for the root of the container's files. */
  readonly root: string;
  readonly folder: string;
  readonly environment: Readonly<Record<string, string>>;
  readonly user: string;
  readonly command: readonly string[];
  readonly healthcheck: readonly string[];
}

/** Linked, not copied: some hundred megabytes that nothing may write to. Copied where the two lie on different disks. */
export async function linked(from: string, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true });
  const entries = await readdir(from, { withFileTypes: true }).catch(() => undefined);
  if (entries === undefined) {
    await link(from, to).catch(() => cp(from, to));
    return;
  }
  await mkdir(to, { recursive: true });
  for (const entry of entries) {
    if (entry.isSymbolicLink()) await cp(join(from, entry.name), join(to, entry.name), { verbatimSymlinks: true });
    else await linked(join(from, entry.name), join(to, entry.name));
  }
}

const ran = (command: readonly string[], folder: string): Promise<void> =>
  new Promise((resolve, reject) => {
    const [program = "", ...words] = command;
    const child = spawn(program === "node" ? process.execPath : program, words, { cwd: folder, stdio: ["ignore", "ignore", "pipe"] });
    let said = "";
    child.stderr.on("data", (bytes: Buffer) => {
      said += bytes.toString("utf8");
    });
    child.once("error", reject);
    child.once("close", (code) =>
      code === 0 ? resolve() : reject(new Error(`${command.join(" ")} ended with ${code}: ${said.trim().slice(-400)}`)),
    );
  });

/** In the place of `npm ci`: the packages that are installed here, which the lock file names too. */
async function run(rest: string, folder: string, project: string): Promise<void> {
  if (/^npm ci\b/.test(rest)) await symlink(join(project, "node_modules"), join(folder, "node_modules"));
  else if (rest.startsWith("node ")) await ran(wordsOf(rest), folder);
  else throw new Error(`what would become of 'RUN ${rest}' cannot be tried here`);
}

/**
 * Carries a Dockerfile out in a folder, stage by stage: what it copies is copied, what it runs with Node is run, its packages are those
 * installed here. @throws where it copies what is not there or is kept out, or where something that it runs fails
 */
export async function carriedOut(text: string, { project, ignore, to }: { project: string; ignore: string; to: string }): Promise<Image> {
  const roots = new Map<string, string>();
  let last: Image | undefined;
  for (const [i, { name, instructions }] of stagesOf(text).entries()) {
    const root = join(to, name ?? `stage-${i}`);
    await mkdir(root, { recursive: true });
    if (name !== undefined) roots.set(name, root);
    let [folder, user] = ["/", "0:0"];
    let [command, healthcheck]: [readonly string[], readonly string[]] = [[], []];
    const environment: Record<string, string> = {};
    const place = (path: string): string => join(root, path.startsWith("/") ? path : join(folder, path));
    for (const { name: what, rest, flags } of instructions) {
      if (what === "WORKDIR") {
        folder = join(folder, rest);
        await mkdir(join(root, folder), { recursive: true });
      } else if (what === "COPY") {
        const words = wordsOf(rest);
        const target = words.at(-1) ?? "";
        const other = flags.from === undefined ? undefined : roots.get(flags.from);
        if (flags.from !== undefined && other === undefined) throw new Error(`COPY --from=${flags.from}: there is no such stage`);
        for (const source of words.slice(0, -1)) {
          const from = join(other ?? project, source);
          if (!existsSync(from)) throw new Error(`COPY ${source}: it is not there`);
          if (other === undefined && isIgnored(ignore, source)) throw new Error(`COPY ${source}: .dockerignore keeps it out`);
          // a file goes into a folder, a folder's contents become the target's
          const isInto =
            target.endsWith("/") &&
            !(await readdir(from).then(
              () => true,
              () => false,
            ));
          await linked(from, isInto ? join(place(target), source) : place(target));
        }
      } else if (what === "RUN") await run(rest, join(root, folder), project);
      else if (what === "ENV") for (const [key, value] of pairsOf(rest)) environment[key] = value;
      else if (what === "USER") user = rest;
      else if (what === "CMD") command = wordsOf(rest);
      else if (what === "HEALTHCHECK") healthcheck = wordsOf(rest.replace(/^CMD\s+/, ""));
    }
    last = { root, folder, environment, user, command, healthcheck };
  }
  if (last === undefined) throw new Error("the Dockerfile has no stage");
  return last;
}
