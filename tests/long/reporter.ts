import { relative } from "node:path";
import type { Reporter, TestModule } from "vitest/node";

const plain = (n: number): string => n.toLocaleString("en-US");

/** At the end of the long run: what chance says of every U, then how often each property was tried. */
export default class LongReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const tests = modules.flatMap((module) =>
      [...module.children.allTests()].map((test) => ({ file: relative(process.cwd(), module.moduleId), test })),
    );
    const found = tests.flatMap(({ file, test }) => {
      const long = test.meta().long;
      return long ? [{ file, name: test.name, ...long }] : [];
    });
    const lines = found.flatMap((one) => one.lines);
    const properties = found.filter(({ runs }) => runs > 0);
    const total = properties.reduce((sum, { runs }) => sum + runs, 0);
    const width = Math.max(0, ...properties.map(({ runs }) => plain(runs).length));
    console.log(
      [
        "",
        `Doubt by chance (${lines.length})`,
        ...lines.map((line) => `  ${line}`),
        "",
        `Properties (${properties.length})`,
        ...properties.map(({ file, name, runs }) => `  ${plain(runs).padStart(width)}  ${file}: ${name}`),
        "",
        `long: ${lines.length} figures by chance, ${properties.length} properties tried ${plain(total)} times`,
        "",
      ].join("\n"),
    );
  }
}
