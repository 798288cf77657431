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

/** `npm test` has fifteen minutes for everything: of the crew's phone it plays the whole job and sends forty pictures, and leaves two hundred and these files to `npm run phone`. */
const longPhone = ["tests/browser/phone-{clocks,full,kept,numbers,pictures,screens}.test.ts"];

/** One stack for all files of a project, and one worker: what a file imports is loaded once. */
const sharedStack = { globalSetup: ["./tests/helpers/stack.ts"], isolate: false };

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
      serial("browser", { ...sharedStack, exclude: longPhone }),
      serial("phone", { ...sharedStack, include: ["tests/browser/phone-*.test.ts"], env: { ASBURIED_PICTURES: "200" } }),
      serial("faults"),
      ...(process.env.ASBURIED_LONG === undefined ? [] : [long]),
    ],
  },
});
