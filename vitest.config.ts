import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** These look at one demo company, each as those before it left it; the others in whichever order they come. */
const demoInTurn = ["record/whole-job", "browser/demo", "browser/looking", "browser/office-pictures"];
const turnOf = ({ moduleId }: TestSpecification): number =>
  (demoInTurn.findIndex((file) => moduleId.endsWith(`${file}.test.ts`)) + 1 + demoInTurn.length) % (demoInTurn.length + 1);
class DemoInTurn extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).toSorted((one, other) => turnOf(one) - turnOf(other));
  }
}

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

/** Faults at chosen moments; `npm test` breaks the same processes in the seeded rounds of the harness, and a move at each of its steps in `tests/unit/shards`. */
const longFaults = ["tests/faults/nothing-lost.test.ts", "tests/faults/company-moves.test.ts"];
/** A record of sixty photos; `npm test` prints those of the sample and of the demo. */
const longRecord = ["tests/record/many-pictures.test.ts"];

/** A company of 1,200 jobs against the bare reading of its rows: not met yet by two of fourteen questions in every run. */
const longMeasured = ["tests/functions/edge-questions-cost.test.ts"];
/** In `npm test` too, with a smaller company. */
const largerMeasured = "tests/functions/edge-history-cost.test.ts";

/** `npm run long` alone asks for it: property tests of the unit project with far more runs, and `tests/long`. */
const long = {
  test: {
    name: "long",
    include: ["tests/long/**/*.test.ts", "tests/unit/**/*.test.ts", ...longFaults, ...longRecord, ...longMeasured, largerMeasured],
    setupFiles: ["./tests/long/setup.ts"],
    testTimeout: 300_000,
    hookTimeout: 120_000,
  },
};

const phone = ["tests/browser/phone-*.test.ts"];
/** `npm test` has fifteen minutes for everything: of the crew's phone it plays the first day of the two-day job, sends forty pictures and draws every screen in Spanish, every third of them for axe; the second day, two hundred, English, all screens for axe and these files are for `npm run phone`. */
const longPhone = ["tests/browser/phone-{clocks,full,numbers,pictures}.test.ts"];
const shortPhone = { ASBURIED_JOB: "first-day", ASBURIED_PICTURES: "40", ASBURIED_LANGUAGES: "es", ASBURIED_AXE_EVERY: "3" };
/** What measures waits until nothing else runs. */
const measured = ["tests/functions/*-cost.test.ts"];

/** One stack for all files of a project, and one worker: what a file imports is loaded once. */
const sharedStack = { globalSetup: ["./tests/helpers/stack.ts"], isolate: false };

export default defineConfig({
  test: {
    sequence: { sequencer: DemoInTurn },
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
      serial("functions", { ...sharedStack, exclude: measured }),
      serial("measured", { ...sharedStack, include: measured, exclude: longMeasured }),
      serial("record", { ...sharedStack, exclude: longRecord }),
      serial("browser", { ...sharedStack, exclude: phone }),
      serial("phone", { ...sharedStack, include: phone }),
      serial("phone-short", { ...sharedStack, include: phone, exclude: longPhone, env: shortPhone }),
      serial("faults", { exclude: longFaults }),
      ...(process.env.ASBURIED_LONG === undefined ? [] : [long]),
    ],
  },
});
