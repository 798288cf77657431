import { type Outcome, ok, refuse } from "#core/outcome/index.ts";

/** An object found in the store. Read it once: either the stream or the bytes. */
export interface Found {
  /** Fails where the store falls silent in the middle of it. */
  readonly stream: ReadableStream<Uint8Array>;
  readonly length: number;
  readonly type: string;
  /** The whole object; `store-unavailable` when it breaks off, falls silent, or its length is not the one announced. */
  bytes(): Promise<Outcome<Uint8Array<ArrayBuffer>>>;
}

/** How long a store may send nothing in the middle of an object: whoever waits for it holds others up. */
export const SILENCE_MS = 15_000;

export const found = (key: string, from: ReadableStream<Uint8Array>, length: number, type: string, silence: number = SILENCE_MS): Found => {
  const stream = notSilent(from, silence);
  return {
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
  };
};

/** The same bytes; fails when nothing comes for so long. Only what is asked for is waited for: a slow reader ends nothing. */
function notSilent(from: ReadableStream<Uint8Array>, silence: number): ReadableStream<Uint8Array> {
  const reader = from.getReader();
  const pull = async (controller: ReadableStreamDefaultController<Uint8Array>): Promise<void> => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const silent = new Promise<never>((_, reject) => {
      timer = setTimeout(() => reject(new Error("silent")), silence);
    });
    try {
      const { value, done } = await Promise.race([reader.read(), silent]);
      if (done) controller.close();
      else controller.enqueue(value);
    } catch (thrown) {
      reader.cancel().catch(() => undefined);
      throw thrown;
    } finally {
      clearTimeout(timer);
    }
  };
  return new ReadableStream({ pull, cancel: (why) => reader.cancel(why) }, { highWaterMark: 0 });
}
