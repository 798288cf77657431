import { defineConfig } from "vitest/config";

/** A project whose files run one after another against real processes: two cores carry one stack, not several. */
const serial = (name: string, extra: object = {}) => ({
  test: {
    name,
    include: [`tests/${name}/**/*.test.ts`],
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    ...extra,
  },
});

const sharedStack = { globalSetup: ["./tests/helpers/stack.ts"] };

export default defineConfig({
  test: {
    projects: [
      { test: { name: "unit", include: ["tests/unit/**/*.test.ts", "tests/reference/**/*.test.ts"], isolate: false, testTimeout: 20_000 } },
      serial("architecture"),
      serial("contract", sharedStack),
      serial("functions", sharedStack),
      serial("record", sharedStack),
      serial("browser", sharedStack),
      serial("faults"),
    ],
  },
});
