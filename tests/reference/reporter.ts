import type { Reporter, TestModule } from "vitest/node";
import type { Recorded } from "./checked.ts";
import { printout, shortLine } from "./printout.ts";

const isReference = ({ moduleId }: TestModule): boolean => moduleId.includes("/tests/reference/");

function recordedIn(modules: readonly TestModule[]): Recorded {
  const tests = modules.flatMap((module) => [...module.children.allTests()]);
  const recorded = tests.flatMap((test) => test.meta().recorded ?? []);
  return {
    checked: recorded.flatMap(({ checked }) => checked),
    disagreements: recorded.flatMap(({ disagreements }) => disagreements),
  };
}

/** At the end of a run: all sources where only reference tests were asked for, one line where they ran among others. */
export default class SourcesReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const reference = modules.filter(isReference);
    if (reference.length === 0) return;
    const recorded = recordedIn(reference);
    console.log(`\n${reference.length === modules.length ? printout(recorded) : shortLine(recorded)}\n`);
  }
}
