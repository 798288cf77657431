import { describe, expect, it } from "vitest";
import { type Listening, machineFrom, type Running } from "#functions/shared/index.ts";

const whole = {
  PRINT_PORT: "0",
  SERVICE_SECRET: "s",
  STORE_ENDPOINT: "http://store",
  STORE_REGION: "auto",
  STORE_BUCKET: "b",
  STORE_ACCESS_KEY: "k",
  STORE_SECRET_KEY: "ss",
  BROWSER_PATH: "/browser",
};

class Ended extends Error {}

function process(env: Readonly<Record<string, string | undefined>>, version = "v24.1.0") {
  const told = { out: "", error: "", codes: [] as number[] };
  const signals = new Map<string, () => void>();
  const running: Running = {
    version,
    env,
    stdout: { write: (text) => (told.out += text) },
    stderr: { write: (text) => (told.error += text) },
    exit(code) {
      told.codes.push(code);
      throw new Ended();
    },
    on: (signal, then) => signals.set(signal, then),
  };
  return { running, told, signals };
}

describe("machineFrom", () => {
  it("hands on secret, store and its own names", () => {
    const { running } = process(whole);
    const machine = machineFrom("print", running, ["BROWSER_PATH"]);
    expect(machine.secret).toBe("s");
    expect(machine.store).toEqual({ endpoint: "http://store", region: "auto", bucket: "b", accessKeyId: "k", secretAccessKey: "ss" });
    expect(machine.environment).toEqual({ BROWSER_PATH: "/browser" });
  });

  it.each([
    [
      "every name that is missing, in one go",
      { ...whole, STORE_BUCKET: "", BROWSER_PATH: undefined },
      undefined,
      "STORE_BUCKET, BROWSER_PATH",
    ],
    ["a port that is none", { ...whole, PRINT_PORT: "99999" }, undefined, "PRINT_PORT is no port"],
    ["a Node that is too old", whole, "v20.0.0", "Node 24 or newer"],
  ])("ends with one sentence that tells %s", (_, env, version, sentence) => {
    const { running, told } = process(env, version);
    expect(() => machineFrom("print", running, ["BROWSER_PATH"])).toThrow(Ended);
    expect(told.codes).toEqual([1]);
    expect(told.error).toMatch(/^print: .*\n$/);
    expect(told.error).toContain(sentence);
  });

  it("listens where it is told, says so, and on a signal ends server, what it holds, and itself", async () => {
    const { running, told, signals } = process({ ...whole, PRINT_PORT: "8123", PRINT_HOST: "10.0.0.1" });
    const done: string[] = [];
    const server: Listening = {
      on: () => server,
      listen: (port, host, then) => {
        done.push(`listen ${host}:${port}`);
        then();
      },
      address: () => ({ port: 8123 }),
      close: (then) => {
        done.push("close");
        queueMicrotask(then);
      },
      closeIdleConnections: () => void done.push("idle"),
      closeAllConnections: () => void done.push("all"),
    };
    const ended = new Promise<number>((resolve) => {
      const leaving: Running = {
        ...running,
        exit: (code) => {
          resolve(code);
          return undefined as never;
        },
      };
      machineFrom("print", leaving).serve(server, async () => done.push("browser"));
    });
    expect(JSON.parse(told.out)).toEqual({ ready: true, port: 8123 });
    signals.get("SIGTERM")?.();
    expect(await ended).toBe(0);
    expect(done).toEqual(["listen 10.0.0.1:8123", "close", "idle", "browser"]);
  });
});
