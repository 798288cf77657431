import { connect, type Socket } from "node:net";
import type { Client } from "../helpers/edge.ts";

/** A photo on its way over a bare connection, so that a part of its body can be held back. */
export interface RawUpload {
  /** Sends what is left. */
  finish(): void;
  /** The status of the answer; undefined when the connection ended without one. */
  readonly status: Promise<number | undefined>;
  end(): void;
}

/** Resolves when the first `count` bytes of the body have left. */
export async function beginUpload(client: Client, path: string, body: Uint8Array, count: number): Promise<RawUpload> {
  const { hostname, port } = new URL(client.edge);
  const socket: Socket = connect(Number(port), hostname);
  socket.setNoDelay(true);
  const status = new Promise<number | undefined>((resolve) => {
    let text = "";
    socket.on("data", (chunk: Buffer) => {
      text += chunk.toString("latin1");
      const found = /^HTTP\/1\.1 (\d{3}) /.exec(text)?.[1];
      if (found !== undefined) resolve(Number(found));
    });
    socket.on("error", () => undefined).on("close", () => resolve(undefined));
  });
  const head = [
    `PUT ${path} HTTP/1.1`,
    `host: ${hostname}:${port}`,
    "connection: close",
    `cookie: ${client.cookie}`,
    "x-asburied: 1",
    `content-length: ${body.length}`,
    "",
    "",
  ];
  socket.write(head.join("\r\n"));
  await new Promise<void>((resolve) => {
    socket.write(body.subarray(0, count), () => resolve());
    socket.on("close", () => resolve());
  });
  return {
    status,
    finish: () => void (socket.destroyed || socket.write(body.subarray(count))),
    end: () => void socket.destroy(),
  };
}
