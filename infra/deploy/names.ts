import { globSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { machineNames, machines, optionalVariables, secrets, variables } from "./platform.ts";

/** Names that the worker's code reads of its environment: by a member of `Environment`, or anywhere by `environment.NAME`. */
export function readByEdge(files: Readonly<Record<string, string>>): ReadonlySet<string> {
  const found = new Set<string>();
  for (const [file, text] of Object.entries(files)) {
    for (const [, name = ""] of text.matchAll(/\b(?:environment|env|settings)\??\.([A-Z][A-Z0-9_]+)\b/g)) found.add(name);
    if (!file.endsWith("edge/environment.ts")) continue;
    for (const [, name = "", type = ""] of text.matchAll(/^\s*readonly ([A-Z][A-Z0-9_]+)\??:\s*(\w+)/gm))
      if (type === "string") found.add(name);
  }
  return found;
}

/** What is bound and no text. */
const bound = ["DB", "MEDIA_QUEUE", "ASSETS"];

/** Names that are read and stand in no list, and names of a list that nothing reads. */
export function edgeNameFaults(read: ReadonlySet<string>): readonly string[] {
  const listed = [...Object.keys(secrets), ...variables, ...optionalVariables];
  return [
    ...[...read]
      .filter((name) => !bound.includes(name) && !listed.includes(name))
      .map((name) => `${name} is read by the worker and in no list`),
    ...listed.filter((name) => !read.has(name)).map((name) => `${name} is in a list, and the worker reads no such name`),
  ];
}

/** What the process itself brings, or a test run, or the image sets. */
const ofProcess =
  /^(PATH|HOME|TMPDIR|LANG|ASBURIED_PROCESS_LOG|(MEDIA|PRINT)_(PORT|HOST)|BROWSER_\w+|LD_LIBRARY_PATH|FONTCONFIG_PATH|NODE_ENV)$/;

/** Names of the environment that media, print and what they share speak of. */
export function readByMachines(files: Readonly<Record<string, string>>): ReadonlySet<string> {
  const found = new Set<string>();
  for (const text of Object.values(files)) {
    for (const [, name = ""] of text.matchAll(/"((?:STORE|SERVICE|MAIL|BROWSER|MEDIA|PRINT)_[A-Z_]+)"/g)) found.add(name);
    for (const [, name = ""] of text.matchAll(/\benv(?:ironment)?\??\.([A-Z][A-Z0-9_]+)\b/g)) found.add(name);
    for (const [, name = ""] of text.matchAll(/^\s*([A-Z]+_[A-Z_]+): \w+,$/gm)) found.add(name);
  }
  return found;
}

export function machineNameFaults(read: ReadonlySet<string>): readonly string[] {
  const listed = new Set<string>(
    machineNames.flatMap((name) => [...machines[name].secrets, ...machines[name].variables, ...machines[name].optional]),
  );
  return [
    ...[...read]
      .filter((name) => !ofProcess.test(name) && !listed.has(name))
      .map((name) => `${name} is read by a container and in no list`),
    ...[...listed].filter((name) => !read.has(name)).map((name) => `${name} is in a container's list, and nothing reads it`),
  ];
}

/** The texts of these files of the project, by path. */
export async function textsOf(project: string, patterns: readonly string[]): Promise<Readonly<Record<string, string>>> {
  const files = patterns.flatMap((pattern) => globSync(pattern, { cwd: project }));
  return Object.fromEntries(await Promise.all(files.map(async (file) => [file, await readFile(join(project, file), "utf8")] as const)));
}
