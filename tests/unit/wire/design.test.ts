import { describe, expect, test } from "vitest";
import { designCheck, designQuestions, designStates, expectations } from "#core/job/index.ts";
import { designAnswer, openApi, plannedDesign } from "#core/wire/index.ts";
import { inch, metric, metricParabola, parabola, planned, type Source, source } from "../design/planned.ts";

const answerTo = (from: Source) => ({ expectations: expectations(from, {}), lines: designCheck(from, {}) });

describe("the answer to a design", () => {
  const { lidLoad: _, ...withoutLoad } = inch.card;
  test.each([
    ["in inches", planned()],
    ["in metric", source(metric.figures, metric.card, { pumpCurve: metricParabola, pipeKind: "rigid" })],
    ["of nothing", source({})],
    ["of figures that cannot be read", source(inch.figures, inch.card, { pumpCurve: "strong" })],
    ["of a head that no pump reaches", planned({ staticHead: "30 ft" })],
    ["without a load", source(inch.figures, withoutLoad, { pumpCurve: parabola })],
  ] as const)("%s is what the document says, member by member", (_name, from) => {
    expect(designAnswer.safeParse(structuredClone(answerTo(from))).error?.issues ?? []).toEqual([]);
  });

  test("a member that the document does not have would be found", () => {
    const { lines, ...rest } = answerTo(planned());
    expect(designAnswer.safeParse({ ...rest, lines: lines.map((line) => ({ ...line, verdict: "safe" })) }).success).toBe(false);
  });

  test("the document names every question and state, what an answer has, and what is sent", () => {
    const document = openApi([
      { method: "POST", path: "/api/design", says: "s", who: ["office"], takes: plannedDesign, gives: { 200: designAnswer } },
    ]);
    const text = JSON.stringify(document);
    for (const word of [...designQuestions, ...designStates, "contributors", "advice", "kitCards"]) expect(text).toContain(`"${word}"`);
  });
});
