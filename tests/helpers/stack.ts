import type { TestProject } from "vitest/node";
import { givenStack, startTestStack, type TestStack } from "#infra/build/test-stack.ts";

declare module "vitest" {
  interface ProvidedContext extends TestStack {}
}

/** One stack for all files of a vitest project: the one that is named in the environment, or one of its own. */
const setup = async (project: TestProject): Promise<() => Promise<void>> => {
  const given = process.env[givenStack];
  const own = given === undefined ? await startTestStack() : undefined;
  const stack = own?.stack ?? (JSON.parse(given ?? "") as TestStack);
  for (const [name, value] of Object.entries(stack)) project.provide(name as keyof TestStack, value);
  return async () => own?.stop();
};

export default setup;
