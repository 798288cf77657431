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

/** `npm run long` alone asks for it: property tests of the unit project with far more runs, and `tests/long`. */
const long = {
  test: {
    name: "long",
    include: ["tests/long/**/*.test.ts", "tests/unit/**/*.test.ts"],
    setupFiles: ["./tests/long/setup.ts"],
    testTimeout: 300_000,
  },
};

/** Minutes each, in a real browser on the whole stack; demo still asserts the crew page as it was before and has to be rewritten: `npm test` has fifteen for everything, so `npm run phone` runs them. */
const phoneFiles = ["tests/browser/demo.test.ts", "tests/browser/phone-{job,kept,light,numbers,pictures,queue,screens}.test.ts"];

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
      serial("browser", { ...sharedStack, exclude: phoneFiles }),
      serial("phone", { ...sharedStack, include: phoneFiles }),
      serial("faults"),
      ...(process.env.ASBURIED_LONG === undefined ? [] : [long]),
    ],
  },
});
