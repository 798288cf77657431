import { certain, expanded, subtract } from "../../doubt/index.ts";
import { VELOCITY_GUIDANCE } from "../../plumbing/index.ts";
import { type Answered, compared, lineOf, slug } from "./answered.ts";
import type { DesignLine } from "./design-line.ts";
import { roomState, type Said, said } from "./design-message.ts";
import { andThen, pick, together } from "./known.ts";
import { flowAdvice, velocityAdvice } from "./line-advice.ts";
import { velocity, working } from "./line-figures.ts";
import { reckonedFlow, wanted } from "./spillway-figures.ts";
import type { Stated } from "./stated.ts";

export function flowLine(stated: Stated, checkValve: boolean): DesignLine {
  const parts = together({ asked: wanted(stated), works: working(stated, checkValve) });
  const answer = pick(parts, ({ asked, works }): Answered => {
    const { outcome, flow } = works;
    const advice = () => flowAdvice(stated, checkValve);
    const wants: Said = ["flow", asked.value];
    switch (outcome.kind) {
      case "curve below static head":
        return {
          state: "not enough",
          says: said("design.flow.below-static-head", { lacks: ["length", outcome.lacks.value], wanted: wants }),
          advice: advice(),
        };
      case "before the first point":
        return { state: "not known", says: said("design.flow.before-the-card", { most: ["flow", outcome.atMost], wanted: wants }) };
      case "several crossings": {
        const flows = outcome.points.map((point) => point.flow.value);
        const ends: Record<string, Said> = { least: ["flow", Math.min(...flows)], most: ["flow", Math.max(...flows)], wanted: wants };
        return { state: "too close to call", says: said("design.flow.several-points", ends), advice: advice() };
      }
      case "beyond the last point": {
        const state = roomState(subtract(certain(outcome.atLeast), asked), "flow") === "enough" ? "enough" : "not known";
        return { state, says: said(`design.flow.beyond-the-card-${slug(state)}`, { least: ["flow", outcome.atLeast], wanted: wants }) };
      }
      default: {
        const expected = flow ?? certain(0);
        const figures: Record<string, Said> = {
          expected: ["flow", expected.value],
          doubt: ["flow", expanded(expected)],
          wanted: wants,
        };
        return compared("flow", roomState(subtract(expected, asked), "flow"), figures, advice);
      }
    }
  });
  return lineOf("flow", answer);
}

const velocityStates = { below: "enough", above: "not enough", "too close to call": "too close to call" } as const;

export function velocityLine(stated: Stated, checkValve: boolean): DesignLine {
  const flow = reckonedFlow(stated, checkValve);
  const parts = together({ flow, pipe: andThen(flow, (reckoned) => velocity(stated, reckoned)) });
  const answer = pick(parts, ({ flow: reckoned, pipe }) => {
    const figures: Record<string, Said> = {
      velocity: ["velocity", pipe.velocity.value],
      doubt: ["velocity", expanded(pipe.velocity)],
      guidance: ["velocity", VELOCITY_GUIDANCE],
    };
    return compared("velocity", velocityStates[pipe.against], figures, () => velocityAdvice(stated, checkValve, reckoned));
  });
  return lineOf("velocity", answer);
}
