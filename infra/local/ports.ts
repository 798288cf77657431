import { connect, createServer } from "node:net";

/** Ports that `fetch` and browsers refuse: the Fetch Standard, section 'Port blocking', from 1024 up. */
const refusedByFetch = new Set([
  1719, 1720, 1723, 2049, 3659, 4045, 4190, 5060, 5061, 6000, 6566, 6665, 6666, 6667, 6668, 6669, 6679, 6697, 10080,
]);

const host = "127.0.0.1";

/** The port that listening on `port` gives (0 lets the system choose), undefined when it is taken or not allowed. */
const listenOnce = (port: number): Promise<number | undefined> =>
  new Promise((resolve) => {
    const server = createServer();
    server.unref();
    server.once("error", () => resolve(undefined));
    server.listen({ port, host, exclusive: true }, () => {
      const address = server.address();
      const given = typeof address === "object" && address !== null ? address.port : undefined;
      server.close(() => resolve(given));
    });
  });

/** True when `port` can be listened on now. */
export const isFree = async (port: number): Promise<boolean> => (await listenOnce(port)) !== undefined;

/** A free port that `fetch` talks to and that is not in `not`. */
export const anyPort = async (not: ReadonlySet<number> = new Set()): Promise<number> => {
  for (let tries = 0; tries < 50; tries += 1) {
    const port = await listenOnce(0);
    if (port !== undefined && !refusedByFetch.has(port) && !not.has(port)) return port;
  }
  throw new Error("No free port was found on 127.0.0.1.");
};

/**
 * A port for each name: the wanted one where it is free, else another. What was taken is said through `log`.
 * @param wanted port by name; 0 or absent lets the system choose
 */
export const choosePorts = async <Name extends string>(
  names: readonly Name[],
  wanted: Partial<Record<Name, number>>,
  log: (line: string) => void,
): Promise<Record<Name, number>> => {
  const chosen = new Map<Name, number>();
  const inUse = new Set<number>();
  for (const name of names) {
    const want = wanted[name] ?? 0;
    const usable = want !== 0 && !refusedByFetch.has(want) && !inUse.has(want) && (await isFree(want));
    const port = usable ? want : await anyPort(inUse);
    if (want !== 0 && !usable) {
      log(
        refusedByFetch.has(want)
          ? `Port ${want} for ${name} is one that browsers refuse; taking ${port}.`
          : `Port ${want} for ${name} is taken; taking ${port}.`,
      );
    }
    chosen.set(name, port);
    inUse.add(port);
  }
  return Object.fromEntries(chosen) as Record<Name, number>;
};

const connects = (port: number): Promise<boolean> =>
  new Promise((resolve) => {
    const socket = connect({ port, host });
    socket.once("connect", () => {
      socket.destroy();
      resolve(true);
    });
    socket.once("error", () => resolve(false));
  });

/** Resolves when something listens on `port`; rejects after 15 s. */
export const answers = async (port: number): Promise<void> => {
  for (let waited = 0; waited < 15_000; waited += 50) {
    if (await connects(port)) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`Nothing listens on port ${port}.`);
};
