/** Reads a process's environment once. Every name that is missing is told in one go, so that nobody finds them one by one. */
export function readEnvironment<const Name extends string>(
  environment: Readonly<Record<string, string | undefined>>,
  names: readonly Name[],
): { readonly ok: true; readonly value: Readonly<Record<Name, string>> } | { readonly ok: false; readonly missing: readonly Name[] } {
  const missing = names.filter((name) => !environment[name]?.trim());
  if (missing.length > 0) return { ok: false, missing };
  return { ok: true, value: Object.fromEntries(names.map((name) => [name, environment[name]])) as Record<Name, string> };
}

/** A TCP port, 0 meaning any free one; undefined when the text is none. */
export function readPort(text: string | undefined): number | undefined {
  if (text === undefined || !/^\d{1,5}$/.test(text)) return undefined;
  const port = Number(text);
  return port <= 65_535 ? port : undefined;
}

/** The sentence for a Node that is too old, or undefined. Entry files stop with it. */
export function tooOldNode(version: string): string | undefined {
  const major = Number(/^v?(\d+)\./.exec(version)?.[1]);
  return major >= 24 ? undefined : `Node 24 or newer is needed; this one is ${version}. Start it with the project's own: npx node`;
}
