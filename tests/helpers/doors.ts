import type { TestContext } from "vitest";
import type { Operation } from "#core/wire/index.ts";
import type { Reply } from "./edge.ts";

/** Who knocks, in the order in which the table shows them. */
export const callers = [
  "nobody",
  "made-up session",
  "crew",
  "office",
  "company owner",
  "operator",
  "another company's",
  "another origin",
] as const;

export type Caller = (typeof callers)[number];

/** One knock at one door: what was stated of it, and what was answered. */
export interface Knock {
  readonly route: string;
  readonly who: string;
  readonly caller: Caller;
  readonly status: number;
  readonly code: string;
}

declare module "vitest" {
  interface TaskMeta {
    knocks?: Knock[];
  }
}

/** Notes what a caller was answered, for the table that `npm run doors` prints. */
export function tried(task: TestContext["task"], route: Operation, caller: Caller, answer: Reply): void {
  const knock: Knock = {
    route: `${route.method} ${route.path}`,
    who: route.who.join(", "),
    caller,
    status: answer.status,
    code: answer.body?.code ?? "",
  };
  task.meta.knocks = [...(task.meta.knocks ?? []), knock];
}
