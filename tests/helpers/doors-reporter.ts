import type { Reporter, TestModule } from "vitest/node";
import { type Caller, callers, type Knock } from "./doors.ts";

/** `passes` where whatever was answered was not the door's answer; else the door's own status. */
const said = ({ status, code, caller }: Knock): string =>
  caller === "another company's"
    ? status === 404
      ? "not there"
      : `LEAKS ${status}`
    : ["session-missing", "session-ended", "role-not-allowed", "request-origin"].includes(code)
      ? `no ${status}`
      : "passes";

const heads: Readonly<Record<Caller, string>> = {
  nobody: "nobody",
  "made-up session": "made up",
  crew: "crew",
  office: "office",
  "company owner": "owner",
  operator: "operator",
  "another company's": "another's id",
  "another origin": "another origin",
};

/** `npm run doors`: every route with who may call it as it states, and what each caller was really answered. */
export default class DoorsReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const tests = modules.flatMap((module) => [...module.children.allTests()]);
    const knocks = tests.flatMap((test) => test.meta().knocks ?? []);
    const routes = [...new Map(knocks.map((knock) => [knock.route, knock.who]))];
    const cell = (route: string, caller: Caller): string => {
      const found = new Set(knocks.filter((knock) => knock.route === route && knock.caller === caller).map(said));
      return found.size === 0 ? "-" : [...found].join(" / ");
    };
    const rows = [
      ["route", ...callers.map((caller) => heads[caller]), "stated"],
      ...routes.map(([route, who]) => [route, ...callers.map((caller) => cell(route, caller)), who]),
    ];
    const widths = rows[0]?.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0))) ?? [];
    const failed = tests.filter((test) => test.result().state === "failed").length;
    console.log(
      [
        "",
        ...rows.map((row) =>
          row
            .map((text, column) => text.padEnd(widths[column] ?? 0))
            .join("  ")
            .trimEnd(),
        ),
        "",
        "passes: let in, whatever is said of what was asked.  no: turned away at the door.  another's id: an id of another company, answered as one that nobody has.  -: says nothing there (no id in the address, or no such caller).",
        `${routes.length} routes, ${knocks.length} knocks, ${failed} answered otherwise than stated`,
        "",
      ].join("\n"),
    );
  }
}
