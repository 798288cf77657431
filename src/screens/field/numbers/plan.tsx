import type { Located, WhereIsEverything } from "../../../job/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { barOf, fitted, lettered, PLAN_WIDTH } from "./plan-fit.ts";

interface PlanProps {
  readonly marks: WhereIsEverything["marks"];
  readonly things: readonly Located[];
  readonly letterOf: (mark: string) => string;
}

/** Marks as crosses with their letters, things as rings with the numbers of the list, their ties between them: to scale. */
export function Plan({ marks, things, letterOf }: PlanProps) {
  const { session } = useSpeaking();
  const placedMarks = marks.flatMap(({ name, place }) => (place === undefined ? [] : [{ sign: letterOf(name), name, place }]));
  const placedThings = things.flatMap(({ place, ties, key }, i) =>
    place === undefined ? [] : [{ sign: String(i + 1), key, place, ties }],
  );
  if (placedMarks.length < 2) return null;
  const all = [...placedMarks, ...placedThings];
  const fit = fitted(all.map(({ place }) => place));
  const spots = all.map(({ place }) => fit.at(place));
  const letters = lettered(spots);
  const spotOf = new Map(placedMarks.map(({ name, place }) => [name, fit.at(place)]));
  const bar = barOf(fit.scale, session.units);
  const foot = fit.height + 30;
  return (
    <svg viewBox={`0 0 ${PLAN_WIDTH} ${Math.ceil(foot)}`} class="plan" aria-hidden="true">
      {placedThings.map(({ key, place, ties }) => {
        const [x, y] = fit.at(place);
        return ties.map(({ mark }) => {
          const from = spotOf.get(mark);
          return from === undefined ? null : <line key={`${key} ${mark}`} class="tie" x1={from[0]} y1={from[1]} x2={x} y2={y} />;
        });
      })}
      {placedMarks.map(({ name, place }) => {
        const [x, y] = fit.at(place);
        return <path key={name} class="mark" d={`M${x - 8} ${y}h16M${x} ${y - 8}v16`} />;
      })}
      {placedThings.map(({ key, place }) => {
        const [x, y] = fit.at(place);
        return (
          <g key={key}>
            <circle class="thing-ring" cx={x} cy={y} r="5.5" />
            <circle class="thing-dot" cx={x} cy={y} r="1.6" />
          </g>
        );
      })}
      {all.map(({ sign }, i) => {
        const [x, y] = letters[i] ?? [0, 0];
        return (
          <text key={`${sign} ${i < placedMarks.length}`} x={x} y={y + 5}>
            {sign}
          </text>
        );
      })}
      <path class="bar" d={`M14 ${foot - 18}v8h${bar.drawn}v-8`} />
      <text class="bar-text" x={bar.drawn + 22} y={foot - 8}>
        {bar.length} {bar.unit}
      </text>
    </svg>
  );
}
