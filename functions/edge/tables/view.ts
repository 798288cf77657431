import type { LineSaid } from "#core/job/index.ts";
import type { Refusal } from "#core/outcome/index.ts";
import type { TableLine, TableRead } from "#core/wire/index.ts";
import { tidyNumber } from "../adapters/own-numbers.ts";
import type { Session } from "../adapters/sessions.ts";
import type { Asked, Changed } from "../openings/asked.ts";
import { sayIn } from "../say.ts";

/** A line as it was read, and what it asks for. */
export interface Line {
  readonly line: number;
  readonly said: LineSaid;
  readonly refusals: readonly Refusal[];
  readonly work?: Asked | Changed;
}

export const outcomeOf = ({ work, refusals }: Line): TableLine["outcome"] => {
  if (refusals.length > 0 || work === undefined) return "bad";
  if ("opening" in work) return "opens";
  return work.facts.length > 0 ? "changes" : "same";
};

/** What is told of the lines. */
export function viewOf(lines: readonly Line[], unread: readonly string[], session: Session): TableRead {
  const say = sayIn(session.language, session.units);
  const told = lines.map((line): TableLine => {
    const { number, title } = line.said.fields;
    const instants = line.said.readings.filter(({ unit }) => unit === "instant").map(({ item, typed }) => [item, typed] as const);
    return {
      line: line.line,
      ...(number && { number: tidyNumber(number) }),
      ...(title && { title }),
      outcome: outcomeOf(line),
      ...(line.work && "facts" in line.work && { job: line.work.place.job }),
      instants: Object.fromEntries(instants),
      refusals: line.refusals.map((refusal) => ({ ...refusal, figures: { ...refusal.figures }, says: say(refusal) })),
    };
  });
  const count = (outcome: TableLine["outcome"]): number => told.filter((one) => one.outcome === outcome).length;
  const sum = { opens: count("opens"), changes: count("changes"), same: count("same"), bad: count("bad") };
  return { lines: told, sum, unread: [...unread], written: false };
}
