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
    reporters: ["default", "./tests/reference/reporter.ts"],
    projects: [
      { test: { name: "unit", include: ["tests/unit/**/*.test.ts"], isolate: false, testTimeout: 20_000 } },
      {
        test: {
          name: "reference",
          include: ["tests/reference/**/*.test.ts"],
          isolate: false,
          testTimeout: 20_000,
          setupFiles: ["./tests/reference/setup.ts"],
        },
      },
      serial("architecture"),
      serial("contract", sharedStack),
      serial("functions", sharedStack),
      serial("record", sharedStack),
      serial("browser", sharedStack),
      serial("faults"),
    ],
  },
});
