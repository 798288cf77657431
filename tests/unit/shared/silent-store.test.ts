import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { expect, it } from "vitest";
import { found } from "#functions/shared/found.ts";
import { makeStore } from "#functions/shared/store.ts";
import { StorePatience } from "../../../functions/edge/photos/patience.ts";

const part = new Uint8Array([1, 2, 3]);
const never = new Promise<never>(() => {});

/** Gives one part, then nothing, and never ends. */
function stuck() {
  const seen = { cancelled: false };
  const stream = new ReadableStream<Uint8Array>({
    start: (controller) => controller.enqueue(part),
    pull: () => never,
    cancel: () => {
      seen.cancelled = true;
    },
  });
  return { stream, seen };
}

it("a store that falls silent in the middle of an object is given up on", async () => {
  const { stream, seen } = stuck();
  const began = performance.now();
  expect(await found("c/originals/a", stream, 6, "image/jpeg", 40).bytes()).toMatchObject({
    ok: false,
    refusal: { code: "store-unavailable", place: "store/c/originals/a" },
  });
  expect(performance.now() - began).toBeGreaterThanOrEqual(39);
  expect(seen.cancelled).toBe(true);
});

it("so is one whose bytes are passed on as they come", async () => {
  const reader = found("k", stuck().stream, 6, "image/jpeg", 40).stream.getReader();
  expect((await reader.read()).value).toEqual(part);
  await expect(reader.read()).rejects.toThrow("silent");
});

it("a slow reader is no silent store: nothing runs while nobody asks", async () => {
  const whole = new Blob([part, part]).stream() as ReadableStream<Uint8Array>;
  const reader = found("k", whole, 6, "image/jpeg", 30).stream.getReader();
  const first = await reader.read();
  await new Promise((resolve) => setTimeout(resolve, 90));
  const rest = await reader.read();
  expect((first.value?.length ?? 0) + (rest.value?.length ?? 0)).toBe(6);
});

it("patience ends the request first, and is over a second later where that does not end the work", async () => {
  const patience = new StorePatience(40);
  const ended = new Promise<string>((resolve) => patience.signal.addEventListener("abort", () => resolve("ended")));
  expect(await patience.over(ended)).toBe("ended");
  await expect(new StorePatience(20).over(never)).rejects.toThrow("silent");
  expect(await new StorePatience(20).over(Promise.resolve(7))).toBe(7);
});

it("a put is ended from outside where the store never answers", async () => {
  const silent = createServer(() => undefined);
  await new Promise<void>((resolve) => silent.listen(0, "127.0.0.1", resolve));
  const endpoint = `http://127.0.0.1:${(silent.address() as AddressInfo).port}`;
  const store = makeStore({ endpoint, region: "auto", bucket: "b", accessKeyId: "a", secretAccessKey: "s" });
  const given = new AbortController();
  setTimeout(() => given.abort(), 60);
  const put = await store.put("c/originals/a", part, { length: 3, type: "image/jpeg", givenUp: given.signal });
  expect(put).toMatchObject({ ok: false, refusal: { code: "store-unavailable", place: "store/c/originals/a" } });
  silent.closeAllConnections();
  silent.close();
});
