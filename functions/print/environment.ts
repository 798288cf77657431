type Variables = Readonly<Record<string, string | undefined>>;

// What the browser and its start script need, and no secret of print's.
const handedOn = [
  "PATH",
  "HOME",
  "TMPDIR",
  "LANG",
  "ASBURIED_PROCESS_LOG",
  "BROWSER_COMMAND",
  "BROWSER_LIBRARY_PATH",
  "BROWSER_FONTCONFIG_PATH",
];

/**
 * The environment of the browser. Where `BROWSER_PATH` is a start script (`BROWSER_COMMAND` names what it starts), the script
 * sets the library path itself: set here, the script's own shell would load the browser's libraries.
 */
export function browserEnvironment(variables: Variables): Readonly<Record<string, string>> {
  const { BROWSER_COMMAND: command, BROWSER_LIBRARY_PATH: libraries, BROWSER_FONTCONFIG_PATH: fonts } = variables;
  const kept = handedOn.flatMap((name): [string, string][] => (variables[name] === undefined ? [] : [[name, variables[name]]]));
  return {
    ...Object.fromEntries(kept),
    TZ: "UTC",
    ...(command === undefined && libraries ? { LD_LIBRARY_PATH: libraries } : {}),
    ...(command === undefined && fonts ? { FONTCONFIG_PATH: fonts } : {}),
  };
}
