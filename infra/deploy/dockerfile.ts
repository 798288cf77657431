/** One instruction of a Dockerfile, its continued lines joined. */
export interface Instruction {
  readonly name: string;
  /** What stands after the name and its flags. */
  readonly rest: string;
  readonly flags: Readonly<Record<string, string>>;
  readonly line: number;
}

/** One `FROM` with what follows it. */
export interface Stage {
  readonly image: string;
  /** Its name after `AS`, where it has one. */
  readonly name: string | undefined;
  readonly instructions: readonly Instruction[];
}

/** The instructions of a Dockerfile (Dockerfile reference: comments, continued lines, flags), without here-documents. */
export function instructionsOf(text: string): readonly Instruction[] {
  const found: Instruction[] = [];
  let held = "";
  let began = 0;
  for (const [i, line] of text.split("\n").entries()) {
    if (/^\s*#/.test(line) || (held === "" && line.trim() === "")) continue;
    if (held === "") began = i + 1;
    held += ` ${line.trim().replace(/\\$/, "")}`;
    if (line.trimEnd().endsWith("\\")) continue;
    const [, name = "", after = ""] = /^\s*(\w+)\s*(.*)$/s.exec(held) ?? [];
    const flags = [...after.matchAll(/(?<=^|\s)--([a-z-]+)=(\S+)/g)];
    const before = /^(?:--[a-z-]+=\S+\s+)*/.exec(after)?.[0] ?? "";
    found.push({
      name: name.toUpperCase(),
      rest: after.slice(before.length).trim(),
      flags: Object.fromEntries(flags.filter((flag) => flag.index < before.length).map(([, key = "", value = ""]) => [key, value])),
      line: began,
    });
    held = "";
  }
  return found;
}

export function stagesOf(text: string): readonly Stage[] {
  const stages: { image: string; name: string | undefined; instructions: Instruction[] }[] = [];
  for (const one of instructionsOf(text)) {
    if (one.name !== "FROM") {
      stages.at(-1)?.instructions.push(one);
      continue;
    }
    const [, image = "", name] = /^(\S+)(?:\s+AS\s+(\S+))?$/i.exec(one.rest) ?? [];
    stages.push({ image, name, instructions: [] });
  }
  return stages;
}

/** What the words of `COPY`, `CMD` and the like are: JSON, or parts between spaces. */
export const wordsOf = (rest: string): readonly string[] =>
  rest.startsWith("[") ? (JSON.parse(rest) as readonly string[]) : rest.split(/\s+/).filter((word) => word !== "");

/** `NAME=value` pairs of `ENV` or `ARG`. */
export const pairsOf = (rest: string): readonly (readonly [string, string])[] =>
  wordsOf(rest).map((word) => {
    const at = word.indexOf("=");
    return at < 0 ? [word, ""] : [word.slice(0, at), word.slice(at + 1)];
  });

const SECRET_NAME = /SECRET|TOKEN|PASSWORD|(^|_)KEY($|_)|CREDENTIAL/i;

/**
 * What is wrong with a Dockerfile by this project's own rules; empty where nothing is.
 * @param node the version of Node that the project runs on
 */
export function dockerfileFaults(text: string, node: string): readonly string[] {
  const stages = stagesOf(text);
  const last = stages.at(-1);
  if (last === undefined) return ["it has no FROM"];
  const names = new Set(stages.flatMap(({ name }) => (name === undefined ? [] : [name])));
  const found: string[] = [];
  for (const { image } of stages) {
    if (names.has(image)) continue;
    const tag = /:([^:/]+)$/.exec(image)?.[1];
    if (tag === undefined || tag.startsWith("latest")) found.push(`${image} has no version`);
    else if (!image.startsWith(`node:${node}-`)) found.push(`${image} is not Node ${node}, which everything is tested on`);
  }
  if (stages.length < 2) found.push("what builds it stays in it: it has one stage alone");
  for (const { name, rest, line } of stages.flatMap(({ instructions }) => instructions)) {
    if (name === "ADD") found.push(`line ${line}: ADD may fetch and unpack; COPY does neither`);
    if (name === "ENV" || name === "ARG") {
      for (const [key] of pairsOf(rest)) if (SECRET_NAME.test(key)) found.push(`line ${line}: ${key} would stay in the image`);
    }
    if (name === "RUN" && /\bnpm (ci|install|i)\b/.test(rest) && !/--omit=dev\b/.test(rest))
      found.push(`line ${line}: packages for development come in`);
    if (name === "RUN" && /\b(curl|wget)\b/.test(rest)) found.push(`line ${line}: it fetches what no lock file knows`);
  }
  const of = (name: string): Instruction | undefined => last.instructions.findLast((one) => one.name === name);
  const user = of("USER")?.rest.split(":")[0] ?? "root";
  if (user === "root" || user === "0" || !/^[1-9]\d*$/.test(user))
    found.push(`it runs as ${user}, and must be a number above 0 that a host can check`);
  if (of("HEALTHCHECK") === undefined || of("HEALTHCHECK")?.rest === "NONE") found.push("it has no HEALTHCHECK");
  for (const name of ["CMD", "HEALTHCHECK"]) {
    const command = of(name)?.rest.replace(/^CMD\s+/, "") ?? "[";
    if (!command.startsWith("[")) found.push(`${name} starts a shell, which does not hand signals on`);
  }
  if (of("CMD") === undefined) found.push("it starts nothing");
  if (last.instructions.some(({ name, flags }) => name === "COPY" && flags.chown !== undefined)) found.push("what runs owns what it runs");
  return found;
}

/** What `COPY` takes from the project, of all stages. */
export const copiedFrom = (text: string): readonly string[] =>
  stagesOf(text)
    .flatMap(({ instructions }) => instructions)
    .filter(({ name, flags }) => name === "COPY" && flags.from === undefined)
    .flatMap(({ rest }) => wordsOf(rest).slice(0, -1));

const patternOf = (pattern: string): RegExp =>
  new RegExp(
    `^${pattern
      .replace(/\/$/, "")
      .replaceAll(/[.+^$()|[\]{}]/g, "\\$&")
      .replaceAll(/\*\*\/|\*|\?/g, (sign) => (sign === "**/" ? "(?:.*/)?" : sign === "*" ? "[^/]*" : "[^/]"))}(?:/.*)?$`,
  );

/** Whether a `.dockerignore` keeps a path out: the last line that fits decides (Dockerfile reference, '.dockerignore file'). */
export function isIgnored(ignore: string, path: string): boolean {
  let out = false;
  for (const line of ignore.split("\n").map((text) => text.trim())) {
    if (line === "" || line.startsWith("#")) continue;
    const back = line.startsWith("!");
    if (patternOf(back ? line.slice(1) : line).test(path)) out = !back;
  }
  return out;
}
