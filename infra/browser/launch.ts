import { chmodSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { browser } from "./unpack.ts";

/** What puppeteer's `launch` takes. `pipe` makes the browser end when the process at the other end does. */
export interface LaunchOptions {
  readonly executablePath: string;
  readonly env: Record<string, string>;
  readonly args: string[];
  readonly headless: "shell";
  readonly pipe: true;
}

const script = fileURLToPath(new URL("./browser.sh", import.meta.url));

const runnable = (path: string): string => {
  if ((statSync(path).mode & 0o111) === 0) chmodSync(path, 0o755);
  return path;
};

/** Switches for a browser that loads nothing but what it is given. Never the package's own list: that one switches off web security. */
export const browserArguments: readonly string[] = [
  "--no-sandbox",
  "--disable-dev-shm-usage",
  "--font-render-hinting=none",
  "--hide-scrollbars",
  "--disable-background-networking",
  "--disable-gpu",
  "--no-first-run",
  "--no-pings",
];

/**
 * The variables that are handed to a process that starts a browser itself (print): `BROWSER_PATH` is what to start,
 * `BROWSER_LIBRARY_PATH` and `BROWSER_FONTCONFIG_PATH` (both absent for a browser of the machine) are what it needs,
 * `BROWSER_COMMAND` is for the start script and must reach it.
 */
export const browserEnvironment = async (): Promise<Record<string, string>> => {
  const found = await browser();
  return {
    BROWSER_PATH: runnable(script),
    BROWSER_COMMAND: found.command,
    ...(found.libraries === undefined ? {} : { BROWSER_LIBRARY_PATH: found.libraries }),
    ...(found.fontConfiguration === undefined ? {} : { BROWSER_FONTCONFIG_PATH: found.fontConfiguration }),
  };
};

/** Options for `puppeteer.launch`, for the browser tests and the project's own pictures. */
export const launchOptions = async (): Promise<LaunchOptions> => {
  const environment = await browserEnvironment();
  const inherited = Object.entries(process.env).filter((pair): pair is [string, string] => pair[1] !== undefined);
  return {
    executablePath: runnable(script),
    env: { ...Object.fromEntries(inherited), ...environment },
    args: [...browserArguments],
    headless: "shell",
    pipe: true,
  };
};
