import { existsSync, readdirSync, readFileSync } from "node:fs";
import { mkdir, rm } from "node:fs/promises";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { browserEnvironment } from "../browser/index.ts";
import { buildApp, bundleEdge } from "../build/index.ts";
import { clearLeftOver, commandOf, killLeftOver, removeRunning, stackMark, workerdMark, writeRunning } from "./left-over.ts";
import { answers, choosePorts } from "./ports.ts";
import { type Secrets, secretsIn } from "./secrets.ts";
import { type Supervised, supervise } from "./supervised.ts";

const project = fileURLToPath(new URL("../../", import.meta.url));

/** The children of a stack, in the order in which they start. `workerd` is the edge's own child. */
export const childNames = ["store", "media", "print", "edge"] as const;
export type ChildName = (typeof childNames)[number];
export type ProcessName = ChildName | "workerd";

export interface StackOptions {
  /** Everything that the stack keeps lies in here. */
  readonly directory: string;
  /** Wanted ports; 0 or absent lets the system choose, a taken one is said and replaced. */
  readonly ports?: Partial<Record<ChildName, number>>;
  /** Empties the folder first. */
  readonly fresh?: boolean;
  /** With the demo company's sign-in links (functions/edge/local.ts), or the worker as deployed (functions/edge/worker.ts). */
  readonly demoLinks: boolean;
  readonly log?: (line: string) => void;
  /** Milliseconds between two calls of the worker's `scheduled`; 15 s when absent. */
  readonly sweepEvery?: number;
  /** Where edge, media and print reach the store; where it listens when absent. Tests put a bad line in between. */
  readonly storeAt?: string;
  /** How many databases are bound (infra/shards); the environment's ASBURIED_SHARDS when absent, else one; never fewer than lie in the folder. */
  readonly shards?: number;
  /** Where browsers find the program when something stands before it; its own address when absent. Without a slash at the end. */
  readonly origin?: string;
  /** A bundled worker, a folder of migrations or entry files to run instead of the project's own, for tests of the stack itself. */
  readonly instead?: { readonly worker?: string; readonly migrations?: string; readonly app?: string } & Partial<
    Record<"store" | "media" | "print", string>
  >;
}

export interface Stack {
  /** Address of the edge, without a slash at the end. */
  readonly edge: string;
  /** The same for a browser: a passkey belongs to a name, never to a number. */
  readonly origin: string;
  readonly store: string;
  readonly media: string;
  readonly print: string;
  readonly directory: string;
  readonly bucket: string;
  readonly secrets: Secrets;
  /** What runs at this moment. */
  readonly processes: readonly { readonly name: ProcessName; readonly pid: number }[];
  /** Sends a signal (SIGKILL when absent); what ends by it is started again by the stack. False when it is down. */
  kill(name: ProcessName, signal?: NodeJS.Signals): boolean;
  /** Ends it in order and resolves when it listens again. */
  restart(name: ChildName): Promise<void>;
  /** Resolves when it listens, at once when it does already. */
  ready(name: ProcessName): Promise<void>;
  /** Takes it down and keeps it down, until `up`. */
  down(name: ChildName): Promise<void>;
  up(name: ChildName): Promise<void>;
  stop(): Promise<void>;
}

/** A file of a folder that was read back from a backup: the demo is not filled into it. */
export const RESTORED = "restored.json";
/** The bucket of every local stack, and the name of its region. */
export const BUCKET = "asburied";
export const REGION = "auto";

const lifeline = fileURLToPath(new URL("./lifeline.ts", import.meta.url));

const projectEntries: Readonly<Record<ChildName, string>> = {
  store: join(project, "infra/local/store.ts"),
  media: join(project, "functions/media/main.ts"),
  print: join(project, "functions/print/main.ts"),
  edge: join(project, "infra/local/edge.ts"),
};

/** The mail service, where whoever starts the stack names one. */
const mailNamed = (): Readonly<Record<string, string>> =>
  Object.fromEntries(["MAIL_URL", "MAIL_TOKEN"].flatMap((name) => (process.env[name] ? [[name, process.env[name]]] : [])));

/** In which shard companies are founded, where whoever starts the stack says so. */
const foundingNamed = (): Readonly<Record<string, string>> =>
  process.env.NEW_COMPANIES ? { NEW_COMPANIES: process.env.NEW_COMPANIES } : {};

/** How many databases a stack of this folder has had. */
const databasesBelow = (edge: string): number => {
  const d1 = join(edge, "d1");
  const files = existsSync(d1) ? readdirSync(d1, { recursive: true, encoding: "utf8" }) : [];
  return files.filter((name) => /[/\\][0-9a-f]{64}\.sqlite$/.test(name)).length;
};

const address = (port: number): string => `http://127.0.0.1:${port}`;
const named = (port: number): string => `http://localhost:${port}`;

/**
 * Starts the whole local stack: the store on disk, media, print, and the edge in workerd with D1 on disk. Children that
 * end are started again on the same port; all of them end with this process, however it ends.
 * @throws when a stack runs in this folder already, or when a part does not start (its own words are in the message).
 */
export const startStack = async (options: StackOptions): Promise<Stack> => {
  const log = options.log ?? (() => {});
  const directory = resolve(options.directory);
  await mkdir(directory, { recursive: true, mode: 0o700 });
  await clearLeftOver(directory, log);
  if (options.fresh) {
    await rm(directory, { recursive: true, force: true });
    await mkdir(directory, { recursive: true, mode: 0o700 });
  }
  const bundled = options.instead?.worker ?? bundleEdge(options.demoLinks ? "local" : "worker");
  const built = options.instead?.app ?? buildApp();
  // when one of them fails the other is waited for: a bundler that nobody listens to any more does not end
  await Promise.allSettled([bundled, built]);
  const [secrets, ports, browser, worker, app] = await Promise.all([
    secretsIn(directory),
    choosePorts(childNames, options.ports ?? {}, log),
    browserEnvironment(),
    bundled,
    built,
  ]);

  const service = {
    STORE_ENDPOINT: options.storeAt ?? address(ports.store),
    STORE_REGION: REGION,
    STORE_BUCKET: BUCKET,
    STORE_ACCESS_KEY: secrets.storeAccessKey,
    STORE_SECRET_KEY: secrets.storeSecretKey,
    SERVICE_SECRET: secrets.serviceSecret,
  };
  const workerdPidFile = join(directory, "workerd.pid");
  const edgePlan = {
    port: ports.edge,
    worker,
    persist: join(directory, "edge"),
    migrations: options.instead?.migrations ?? join(project, "infra/migrations"),
    shards: Math.max(options.shards ?? Number(process.env.ASBURIED_SHARDS ?? 1), databasesBelow(join(directory, "edge"))),
    app,
    sweepEvery: options.sweepEvery ?? 15_000,
    ...(options.origin === undefined ? {} : { behind: options.origin }),
    bindings: {
      ...service,
      MEDIA_URL: address(ports.media),
      PRINT_URL: address(ports.print),
      OPERATOR_KEY: secrets.operatorKey,
      SEAL_SECRET: secrets.sealSecret,
      ORIGIN: options.origin ?? named(ports.edge),
      ...foundingNamed(),
    },
  };
  const environments: Readonly<Record<ChildName, Readonly<Record<string, string>>>> = {
    store: {
      STORE_DIRECTORY: join(directory, "store"),
      STORE_PORT: String(ports.store),
      STORE_ACCESS_KEY: secrets.storeAccessKey,
      STORE_SECRET_KEY: secrets.storeSecretKey,
      STORE_BUCKET: BUCKET,
    },
    media: { ...service, PORT: String(ports.media), MEDIA_PORT: String(ports.media) },
    print: { ...service, ...browser, ...mailNamed(), PORT: String(ports.print), PRINT_PORT: String(ports.print) },
    edge: { EDGE_PLAN: JSON.stringify(edgePlan), WORKERD_PID_FILE: workerdPidFile },
  };

  const entries = {
    ...projectEntries,
    store: options.instead?.store ?? projectEntries.store,
    media: options.instead?.media ?? projectEntries.media,
    print: options.instead?.print ?? projectEntries.print,
  };

  const workerdPid = (): number | undefined => {
    try {
      const pid = Number(readFileSync(workerdPidFile, "utf8"));
      return commandOf(pid)?.includes(workerdMark(ports.edge)) ? pid : undefined;
    } catch {
      return undefined;
    }
  };
  const killWorkerd = async (): Promise<void> => {
    const pid = workerdPid();
    if (pid !== undefined) await killLeftOver(pid, workerdMark(ports.edge));
  };

  const children = new Map<ChildName, Supervised>();
  const processes = (): { name: ProcessName; pid: number }[] => {
    const list: { name: ProcessName; pid: number }[] = [];
    for (const [name, child] of children) {
      const pid = child.pid();
      if (pid !== undefined) list.push({ name, pid });
    }
    const pid = workerdPid();
    return pid === undefined ? list : [...list, { name: "workerd", pid }];
  };
  let stopping: Promise<void> | undefined;
  const note = (): void => {
    if (!stopping)
      writeRunning(directory, { pid: process.pid, edge: address(ports.edge), store: address(ports.store), children: processes() });
  };
  const start = async (name: ChildName): Promise<void> => {
    const child = supervise({
      name,
      command: process.execPath,
      args: ["--import", lifeline, entries[name], stackMark(directory)],
      env: environments[name],
      folder: project,
      counted: name === "edge" ? options.instead?.worker === undefined : options.instead?.[name] === undefined,
      log,
      changed: note,
      ...(name === "edge" ? { beforeStart: killWorkerd } : {}),
    });
    children.set(name, child);
    await child.ready();
    note();
  };
  const childOf = (name: ChildName): Supervised => {
    const child = children.get(name);
    if (child === undefined) throw new Error(`${name} is down.`);
    return child;
  };
  const down = async (name: ChildName): Promise<void> => {
    const child = children.get(name);
    if (child === undefined) return;
    await child.stop();
    children.delete(name);
  };
  const stopAll = async (): Promise<void> => {
    // the edge first, so that what it is doing can still reach the others
    await down("edge");
    await Promise.all(childNames.map(down));
    await killWorkerd();
    removeRunning(directory);
  };
  const stop = (): Promise<void> => {
    stopping ??= stopAll();
    return stopping;
  };

  try {
    await Promise.all(childNames.map(start));
  } catch (error) {
    await stop();
    throw error;
  }

  return {
    edge: address(ports.edge),
    origin: options.origin ?? named(ports.edge),
    store: address(ports.store),
    media: address(ports.media),
    print: address(ports.print),
    directory,
    bucket: BUCKET,
    secrets,
    get processes() {
      return processes();
    },
    kill: (name, signal = "SIGKILL") => {
      if (name !== "workerd") return children.get(name)?.kill(signal) ?? false;
      const pid = workerdPid();
      return pid !== undefined && process.kill(pid, signal);
    },
    restart: async (name) => childOf(name).restart(),
    ready: async (name) => {
      if (name === "workerd") await answers(ports.edge);
      else await childOf(name).ready();
    },
    down,
    up: async (name) => {
      if (!children.has(name)) await start(name);
    },
    stop,
  };
};
