import { type RefusalCode, refusalCodes } from "../../outcome/index.ts";
import { makeSayer } from "../../record/index.ts";
import type { SessionView, WireProblem } from "../../wire/index.ts";

/** A refusal of the edge as a sentence of this app's language; what the edge said itself, where the code is not known here. */
export function refusalText(problem: WireProblem, { language, units }: Pick<SessionView, "language" | "units">): string {
  const { code, place, column, figures, detail } = problem;
  if (!(refusalCodes as readonly string[]).includes(code)) return detail;
  return makeSayer({ language, units, zone: "UTC" }).refusal({
    code: code as RefusalCode,
    place,
    figures,
    ...(column === undefined ? {} : { column }),
  });
}
