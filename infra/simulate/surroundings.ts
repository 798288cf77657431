import type { CountedDatabase } from "./counted-database.ts";

/** The queue's messages that no consumer has had, and how many were sent since the last look. */
export interface QueueHeld {
  readonly waiting: object[];
  sent: number;
}

/** What the platform hands the worker: two databases, a queue that keeps what it is sent, and addresses that only stand-ins answer. */
export function surroundings(origin: string, directory: CountedDatabase, home: CountedDatabase) {
  const queue: QueueHeld = { waiting: [], sent: 0 };
  const environment = {
    DB: directory.d1,
    DB_2: home.d1,
    NEW_COMPANIES: "DB_2",
    MEDIA_QUEUE: {
      sendBatch: async (list: readonly { readonly body: object }[]) => {
        queue.sent += list.length;
        queue.waiting.push(...list.map(({ body }) => body));
      },
    },
    STORE_ENDPOINT: "http://store.invalid",
    STORE_REGION: "auto",
    STORE_BUCKET: "bucket",
    STORE_ACCESS_KEY: "key",
    STORE_SECRET_KEY: "secret",
    MEDIA_URL: "http://media.invalid",
    PRINT_URL: "http://print.invalid",
    SERVICE_SECRET: "a secret of a simulation",
    OPERATOR_KEY: "operator",
    SEAL_SECRET: "another secret of a simulation",
    ORIGIN: origin,
  };
  return { environment, queue };
}
