import { join } from "node:path";
import { Readable } from "node:stream";
import { makeStore, type Store } from "#functions/shared/index.ts";
import { BUCKET, REGION, runningIn, secretsIn, startStore } from "../local/index.ts";

export interface OpenStore {
  readonly store: Store;
  /** That wraps the seal keys, and seals the lists of backups. */
  readonly secret: string;
  close(): Promise<void>;
}

/** The store of a stack: the one that runs in this folder, or where none does, one that is started for this alone. */
export async function openStore(directory: string): Promise<OpenStore> {
  const { storeAccessKey: accessKeyId, storeSecretKey: secretAccessKey, sealSecret: secret } = await secretsIn(directory);
  const keys = { accessKeyId, secretAccessKey };
  const running = runningIn(directory)?.store;
  const own =
    running === undefined ? await startStore({ directory: join(directory, "store"), port: 0, bucket: BUCKET, ...keys }) : undefined;
  const endpoint = running ?? own?.endpoint ?? "";
  const fromWeb = (stream: ReadableStream<Uint8Array>) => Readable.fromWeb(stream as never);
  const store = makeStore({ endpoint, region: REGION, bucket: BUCKET, ...keys, fromWeb });
  return { store, secret, close: async () => own?.close() };
}
