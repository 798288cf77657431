import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, expect, test } from "vitest";
import { makeStore, type Store } from "#functions/shared/store.ts";

const bytes = new Uint8Array([1, 2, 3]);
const about = { length: 3, type: "image/jpeg" };
let close: () => void = () => undefined;
afterEach(() => close());

/** A store that says yes to every PUT, and that answers what it has of it as it is told here. */
async function saysYes(has: { readonly status: number; readonly length?: number }): Promise<Store> {
  const server = createServer((request, response) => {
    request.resume().on("end", () => {
      if (request.method === "PUT") response.writeHead(200, { etag: '"5289df737df57326fcdd22597afb1fac"' });
      else response.writeHead(has.status, has.length === undefined ? {} : { "content-length": String(has.length) });
      response.end();
    });
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  close = () => {
    server.closeAllConnections();
    server.close();
  };
  const endpoint = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return makeStore({ endpoint, region: "auto", bucket: "b", accessKeyId: "a", secretAccessKey: "s" });
}

test.each([
  ["keeps nothing", { status: 404 }, { why: "NotKept", status: 0 }],
  ["keeps a part", { status: 200, length: 2 }, { why: "NotKept", status: 0 }],
  ["cannot say what it has", { status: 503 }, { status: 503 }],
])("a store that says yes and %s: not stored, and nobody lets go of the bytes", async (_name, has, figures) => {
  for (const key of ["c/originals/a", "c/records/a"])
    expect(await (await saysYes(has)).put(key, bytes, about)).toMatchObject({
      ok: false,
      refusal: { code: "store-unavailable", place: `store/${key}`, figures },
    });
});

test("one that has it all has stored it", async () => {
  expect(await (await saysYes({ status: 200, length: 3 })).put("c/originals/a", bytes, about)).toEqual({ ok: true, value: about });
});
