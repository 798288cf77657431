import { createServer, type Server } from "node:net";
import { afterEach, expect, test } from "vitest";
import { anyPort, choosePorts, isFree } from "#infra/local/ports.ts";

const open: Server[] = [];
const listen = async (): Promise<number> => {
  const server = createServer();
  open.push(server);
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return (server.address() as { port: number }).port;
};
afterEach(() => Promise.all(open.splice(0).map((server) => new Promise((resolve) => server.close(resolve)))));

test("a taken port is said and replaced, a free one is kept", async () => {
  const taken = await listen();
  const free = await anyPort();
  const said: string[] = [];
  const ports = await choosePorts(["edge", "store", "media"], { edge: taken, store: free }, (line) => said.push(line));
  expect(ports.store).toBe(free);
  expect(ports.edge).not.toBe(taken);
  expect(new Set(Object.values(ports)).size).toBe(3);
  expect(said).toEqual([`Port ${taken} for edge is taken; taking ${ports.edge}.`]);
});

test("the same port wanted twice is given once", async () => {
  const free = await anyPort();
  const ports = await choosePorts(["edge", "store"], { edge: free, store: free }, () => {});
  expect(ports.edge).toBe(free);
  expect(ports.store).not.toBe(free);
});

test("a port that browsers refuse (Fetch Standard, port blocking) is never taken", async () => {
  const said: string[] = [];
  const ports = await choosePorts(["edge"], { edge: 6000 }, (line) => said.push(line));
  expect(ports.edge).not.toBe(6000);
  expect(said[0]).toContain("6000");
});

test("a port is free again after its server has gone", async () => {
  const port = await listen();
  expect(await isFree(port)).toBe(false);
  const [server] = open.splice(0);
  await new Promise((resolve) => server?.close(resolve));
  expect(await isFree(port)).toBe(true);
});
