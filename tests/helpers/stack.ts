import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { startStack } from "#infra/local/index.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Addresses, without a slash at the end. */
    edge: string;
    store: string;
    media: string;
    print: string;
    /** What the operator of the installation opens companies with. */
    operatorKey: string;
    serviceSecret: string;
    storeAccessKey: string;
    storeSecretKey: string;
    storeBucket: string;
    /** Where the stack keeps everything; D1's files lie under `edge/`. */
    stackDirectory: string;
  }
}

/** One stack for all files of a vitest project: the real edge, store, media and print. */
const setup = async (project: TestProject): Promise<() => Promise<void>> => {
  const directory = await mkdtemp(join(tmpdir(), "asburied-test-"));
  const log = process.env.ASBURIED_LOG ? (line: string): void => console.error(line) : () => {};
  const stack = await startStack({ directory, demoLinks: true, sweepEvery: 2_000, log });
  project.provide("edge", stack.edge);
  project.provide("store", stack.store);
  project.provide("media", stack.media);
  project.provide("print", stack.print);
  project.provide("operatorKey", stack.secrets.operatorKey);
  project.provide("serviceSecret", stack.secrets.serviceSecret);
  project.provide("storeAccessKey", stack.secrets.storeAccessKey);
  project.provide("storeSecretKey", stack.secrets.storeSecretKey);
  project.provide("storeBucket", stack.bucket);
  project.provide("stackDirectory", stack.directory);
  return async () => {
    await stack.stop();
    await rm(directory, { recursive: true, force: true });
  };
};

export default setup;
