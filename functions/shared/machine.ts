import { readEnvironment, readPort, tooOldNode } from "./environment.ts";
import type { StoreSettings } from "./store.ts";

/** As much of Node's process as an entry file hands in, so that this file knows no Node. */
export interface Running {
  readonly version: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly stdout: { write(text: string): unknown };
  readonly stderr: { write(text: string): unknown };
  exit(code: number): never;
  on(signal: "SIGTERM" | "SIGINT", then: () => void): unknown;
}

/** As much of Node's HTTP server as is needed here. */
export interface Listening {
  on(event: "error", then: (error: Error) => void): unknown;
  listen(port: number, host: string, then: () => void): unknown;
  address(): string | { readonly port: number } | null;
  close(then: () => void): unknown;
  closeIdleConnections(): void;
  closeAllConnections(): void;
}

const common = ["SERVICE_SECRET", "STORE_ENDPOINT", "STORE_REGION", "STORE_BUCKET", "STORE_ACCESS_KEY", "STORE_SECRET_KEY"] as const;

/** How long requests in work may take after the signal to end, in milliseconds. */
const END_MS = 2_000;

/** A function that runs as a process of its own and is asked over HTTP: what media and print have in common. */
export interface Machine<Name extends string> {
  readonly secret: string;
  readonly store: StoreSettings;
  /** The names of the environment that it alone needs. */
  readonly environment: Readonly<Record<Name, string>>;
  /** One line to whoever reads the log. */
  readonly report: (line: string) => void;
  /** Listens, says so with its port in one line of JSON, and on SIGTERM or SIGINT ends what is in work, then `close`, then itself. */
  readonly serve: (server: Listening, close: () => Promise<unknown>) => void;
}

/**
 * Reads what a machine needs of its process; `PRINT_PORT` and `PRINT_HOST` for one that is named `print`. Ends the process with
 * one sentence where Node is too old, a name is missing, or the port is none.
 */
export function machineFrom<const Name extends string = never>(name: string, running: Running, names: readonly Name[] = []): Machine<Name> {
  const report = (line: string): void => void running.stderr.write(`${name}: ${line}\n`);
  const stop = (sentence: string): never => {
    report(sentence);
    return running.exit(1);
  };
  const old = tooOldNode(running.version);
  if (old) stop(old);
  const [portName, hostName] = [`${name.toUpperCase()}_PORT`, `${name.toUpperCase()}_HOST`];
  const read = readEnvironment(running.env, [portName, ...common, ...names]);
  const value = read.ok ? read.value : stop(`missing in the environment: ${read.missing.join(", ")}`);
  const port = readPort(value[portName]) ?? stop(`${portName} is no port`);
  const host = running.env[hostName] ?? "127.0.0.1";
  const given = (wanted: string): string => value[wanted] ?? "";

  function serve(server: Listening, close: () => Promise<unknown>): void {
    const end = (): void => {
      const limit = setTimeout(() => server.closeAllConnections(), END_MS);
      server.close(() => {
        clearTimeout(limit);
        void close().then(() => running.exit(0));
      });
      server.closeIdleConnections();
    };
    running.on("SIGTERM", end);
    running.on("SIGINT", end);
    server.on("error", (error) => stop(error.message));
    server.listen(port, host, () => {
      const address = server.address();
      const bound = typeof address === "object" && address !== null ? address.port : port;
      running.stdout.write(`${JSON.stringify({ ready: true, port: bound })}\n`);
    });
  }

  return {
    secret: given("SERVICE_SECRET"),
    store: {
      endpoint: given("STORE_ENDPOINT"),
      region: given("STORE_REGION"),
      bucket: given("STORE_BUCKET"),
      accessKeyId: given("STORE_ACCESS_KEY"),
      secretAccessKey: given("STORE_SECRET_KEY"),
    },
    environment: Object.fromEntries(names.map((one) => [one, given(one)])) as Record<Name, string>,
    report,
    serve,
  };
}
