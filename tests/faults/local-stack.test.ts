import { type ChildProcess, spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { childNames, type Stack, startStack } from "#infra/local/index.ts";
import { commandOf } from "#infra/local/left-over.ts";
import { writeStandIns } from "./stand-ins.ts";

interface Held {
  readonly edge: string;
  readonly processes: readonly { readonly name: string; readonly pid: number }[];
}

let folder = "";
let standIns: Awaited<ReturnType<typeof writeStandIns>>;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "asburied-stack-"));
  standIns = await writeStandIns(folder);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const get = async (address: string): Promise<string> => (await fetch(address, { headers: { connection: "close" } })).text();
const until = async (wanted: () => boolean | Promise<boolean>, limit = 5_000): Promise<boolean> => {
  for (let waited = 0; waited < limit; waited += 50) {
    if (await wanted()) return true;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return false;
};
const pidOf = (list: Held["processes"], name: string): number => {
  const pid = list.find((one) => one.name === name)?.pid;
  if (pid === undefined) throw new Error(`${name} does not run.`);
  return pid;
};
const notes = async (edge: string): Promise<{ text: string; via: string }[]> => JSON.parse(await get(`${edge}/notes`));

describe("a running stack", () => {
  let stack: Stack;
  const said: string[] = [];
  beforeAll(async () => {
    stack = await startStack({
      directory: join(folder, "one"),
      demoLinks: true,
      sweepEvery: 200,
      log: (line) => said.push(line),
      instead: standIns.instead,
    });
  });
  afterAll(() => stack.stop());

  test("has its four children and workerd, and answers", async () => {
    expect(stack.processes.map(({ name }) => name).sort()).toEqual([...childNames, "workerd"].sort());
    expect(await get(stack.edge)).toBe("here");
    expect(await get(`${stack.edge}/media`)).toBe(String(pidOf(stack.processes, "media")));
  });

  test("carries the queue, its dead letters and the sweep", async () => {
    await get(`${stack.edge}/add?text=seen`);
    await get(`${stack.edge}/add?text=cannot+be+read`);
    const all = async (): Promise<string[]> => (await notes(stack.edge)).map(({ text, via }) => `${text}: ${via}`);
    expect(await until(async () => (await all()).includes("cannot be read: media-dead"))).toBe(true);
    const list = await all();
    expect(list).toContain("seen: media");
    expect(list.filter((line) => line === "cannot be read: media")).toHaveLength(3);
    expect(await until(async () => (await all()).includes("sweep: scheduled"))).toBe(true);
  });

  test.each(["media", "store", "print", "edge", "workerd"] as const)(
    "%s comes back on the same port after kill -9, nothing acknowledged lost",
    async (name) => {
      await get(`${stack.edge}/add?text=before+${name}`);
      const before = pidOf(stack.processes, name);
      expect(stack.kill(name)).toBe(true);
      await stack.ready(name);
      expect(await until(() => stack.processes.some((one) => one.name === name && one.pid !== before))).toBe(true);
      expect(await until(async () => (await get(stack.edge).catch(() => "")) === "here")).toBe(true);
      expect((await notes(stack.edge)).map(({ text }) => text)).toContain(`before ${name}`);
      expect(await get(`${stack.edge}/media`)).toBe(String(pidOf(stack.processes, "media")));
    },
  );

  test("sweeps again after workerd was killed", async () => {
    stack.kill("workerd");
    expect(await until(async () => (await get(stack.edge).catch(() => "")) === "here")).toBe(true);
    const count = (await notes(stack.edge)).filter(({ via }) => via === "scheduled").length;
    expect(await until(async () => (await notes(stack.edge)).filter(({ via }) => via === "scheduled").length > count)).toBe(true);
  });

  test("a part can be taken down, stays down, and comes up again", async () => {
    await stack.down("media");
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(stack.processes.map(({ name }) => name)).not.toContain("media");
    await expect(get(stack.media)).rejects.toThrow();
    await stack.up("media");
    expect(await get(stack.media)).toBe(String(pidOf(stack.processes, "media")));
  });

  test("an ordered restart resolves when the next one listens", async () => {
    const before = pidOf(stack.processes, "print");
    await stack.restart("print");
    expect(await get(stack.print)).not.toBe(String(before));
  });

  test("a second stack in the same folder is refused with the first one's address", async () => {
    await expect(startStack({ directory: join(folder, "one"), demoLinks: true, instead: standIns.instead })).rejects.toThrow(stack.edge);
  });

  test("its port taken, another one is said and used", async () => {
    const lines: string[] = [];
    const port = Number(new URL(stack.edge).port);
    const other = await startStack({
      directory: join(folder, "two"),
      demoLinks: true,
      ports: { edge: port },
      log: (line) => lines.push(line),
      instead: standIns.instead,
    });
    expect(other.edge).not.toBe(stack.edge);
    expect(lines).toContain(`Port ${port} for edge is taken; taking ${new URL(other.edge).port}.`);
    await other.stop();
  });
});

test("after a stop nothing runs, and a second start has the same secrets and all that was kept", async () => {
  const options = { directory: join(folder, "three"), demoLinks: true, instead: standIns.instead };
  const first = await startStack(options);
  await get(`${first.edge}/add?text=kept`);
  const pids = first.processes.map(({ pid }) => pid);
  await first.stop();
  expect(pids.filter((pid) => commandOf(pid) !== undefined)).toEqual([]);
  expect(existsSync(join(options.directory, "running.json"))).toBe(false);
  const second = await startStack(options);
  expect((await notes(second.edge)).map(({ text }) => text)).toContain("kept");
  expect(second.secrets).toEqual(first.secrets);
  await second.stop();
});

test("a part that does not start stops the start, with its own words, and leaves nothing running", async () => {
  const directory = join(folder, "four");
  await expect(startStack({ directory, demoLinks: true, instead: { ...standIns.instead, store: standIns.broken } })).rejects.toThrow(
    "the shelf is full",
  );
  expect(existsSync(join(directory, "running.json"))).toBe(false);
});

describe("a stack whose own process is killed", () => {
  const held: ChildProcess[] = [];
  afterAll(() => {
    for (const child of held) child.kill("SIGKILL");
  });

  const hold = async (
    directory: string,
    path = process.env.PATH ?? "",
  ): Promise<{ child: ChildProcess; lines: AsyncIterator<string>; said: Held }> => {
    const child = spawn(process.execPath, [standIns.holder, JSON.stringify({ directory, demoLinks: true, instead: standIns.instead })], {
      stdio: ["ignore", "pipe", "inherit"],
      env: { ...process.env, PATH: path },
    });
    held.push(child);
    const lines = createInterface({ input: child.stdout as NodeJS.ReadableStream })[Symbol.asyncIterator]();
    return { child, lines, said: JSON.parse(String((await lines.next()).value)) };
  };
  const gone = ({ processes }: Held): Promise<boolean> => until(() => processes.every(({ pid }) => commandOf(pid) === undefined));

  // without setpriv the children notice the end of their pipe, and take workerd with them
  test.each([
    ["with setpriv", process.env.PATH ?? ""],
    ["without setpriv", join(tmpdir(), "no-such-folder")],
  ])("takes its children with it (%s), and the folder can be used again", async (_, path) => {
    const directory = join(folder, `killed ${path.length}`);
    const { child, said } = await hold(directory, path);
    expect(said.processes).toHaveLength(5);
    child.kill("SIGKILL");
    expect(await gone(said)).toBe(true);
    const again = await startStack({ directory, demoLinks: true, instead: standIns.instead });
    expect(await get(again.edge)).toBe("here");
    await again.stop();
  });

  test("without setpriv, a workerd that outlived its edge is cleared before the next edge starts", async () => {
    const { child, lines, said } = await hold(join(folder, "no-setpriv"), join(tmpdir(), "no-such-folder"));
    child.kill("SIGUSR2");
    const after: Held = JSON.parse(String((await lines.next()).value));
    expect(pidOf(after.processes, "workerd")).not.toBe(pidOf(said.processes, "workerd"));
    expect(commandOf(pidOf(said.processes, "workerd"))).toBeUndefined();
    expect(await get(after.edge)).toBe("here");
    child.kill("SIGKILL");
    expect(await gone(after)).toBe(true);
  });
});
