import { type Outcome, ok, refuse } from "#core/outcome/index.ts";

/** An object found in the store. Read it once: either the stream or the bytes. */
export interface Found {
  readonly stream: ReadableStream<Uint8Array>;
  readonly length: number;
  readonly type: string;
  /** The whole object; `store-unavailable` when it breaks off or its length is not the one announced. */
  bytes(): Promise<Outcome<Uint8Array<ArrayBuffer>>>;
}

export const found = (key: string, stream: ReadableStream<Uint8Array>, length: number, type: string): Found => ({
  stream,
  length,
  type,
  bytes: async () => {
    const whole = new Uint8Array(length);
    let at = 0;
    try {
      const reader = stream.getReader();
      for (;;) {
        const { value, done } = await reader.read();
        if (done) break;
        if (at + value.length > length) {
          await reader.cancel();
          return refuse("store-unavailable", `store/${key}`, { why: "longer than announced", status: 200 });
        }
        whole.set(value, at);
        at += value.length;
      }
    } catch (thrown) {
      return refuse("store-unavailable", `store/${key}`, { why: (thrown as Error).name ?? "broken off", status: 200 });
    }
    if (at !== length) return refuse("store-unavailable", `store/${key}`, { why: "broken off", status: 200 });
    return ok(whole);
  },
});
