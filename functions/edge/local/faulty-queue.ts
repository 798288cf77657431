import type { PhotoHint } from "../environment.ts";

type Batch = MessageBatch<PhotoHint>;
type Deliver = (batch: Batch) => Promise<unknown>;
type Later = (work: () => Promise<unknown>) => void;

/** The same messages backwards; whether they are taken is told to nobody. */
const backwards = (batch: Batch): Batch =>
  ({
    queue: batch.queue,
    messages: [...batch.messages].reverse().map(({ id, timestamp, body, attempts }) => ({
      id,
      timestamp,
      body,
      attempts,
      ack: () => undefined,
      retry: () => undefined,
    })),
    ackAll: () => undefined,
    retryAll: () => undefined,
  }) as unknown as Batch;

/** What a queue may do to a batch: deliver it twice at once and again later, later and backwards, or never. */
export const queueFaults: Readonly<
  Record<"twice" | "out of order" | "lost", (batch: Batch, deliver: Deliver, later: Later) => Promise<void>>
> = {
  async twice(batch, deliver, later) {
    later(() => deliver(backwards(batch)));
    await Promise.all([deliver(batch), deliver(backwards(batch))]);
  },
  async "out of order"(batch, deliver, later) {
    later(() => deliver(backwards(batch)));
    batch.ackAll();
  },
  async lost(batch) {
    batch.ackAll();
  },
};
