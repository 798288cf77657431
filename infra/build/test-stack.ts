import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { startStack } from "../local/index.ts";

/** What a test is told of the stack that it runs against; addresses without a slash at the end. */
export interface TestStack {
  readonly edge: string;
  readonly store: string;
  readonly media: string;
  readonly print: string;
  /** What the operator of the installation opens companies with. */
  readonly operatorKey: string;
  readonly serviceSecret: string;
  readonly storeAccessKey: string;
  readonly storeSecretKey: string;
  readonly storeBucket: string;
  /** Where the stack keeps everything; D1's files lie under `edge/`. */
  readonly stackDirectory: string;
}

/** Names a stack that runs already, as JSON: the vitest projects that `npm test` runs after one another share it. */
export const givenStack = "ASBURIED_STACK";

/** The real edge, store, media and print in a folder of their own, which goes when they are stopped. */
export async function startTestStack(): Promise<{ readonly stack: TestStack; readonly stop: () => Promise<void> }> {
  const directory = await mkdtemp(join(tmpdir(), "asburied-test-"));
  const log = process.env.ASBURIED_LOG ? (line: string): void => console.error(line) : () => {};
  const started = await startStack({ directory, demoLinks: true, sweepEvery: 2_000, log });
  return {
    stack: {
      edge: started.edge,
      store: started.store,
      media: started.media,
      print: started.print,
      operatorKey: started.secrets.operatorKey,
      serviceSecret: started.secrets.serviceSecret,
      storeAccessKey: started.secrets.storeAccessKey,
      storeSecretKey: started.secrets.storeSecretKey,
      storeBucket: started.bucket,
      stackDirectory: started.directory,
    },
    stop: async () => {
      await started.stop();
      await rm(directory, { recursive: true, force: true });
    },
  };
}
