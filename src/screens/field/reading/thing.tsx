import type { Check } from "../../../job/index.ts";
import type { SetUpPoint } from "./set-up-points.ts";

interface ThingProps {
  /** Its items lie around the thing, in its order; the other points stand aside. */
  readonly check: Check;
  readonly points: readonly SetUpPoint[];
  /** Index of the point that comes next; -1 when all are read. */
  readonly now: number;
  readonly title: (point: SetUpPoint) => string;
}

const WIDTH = 340;
const HEIGHT = 196;
const BASIN = { left: 140, top: 36, side: 122 };
/** The height mark, whatever else is read, the mark again: one under the other. */
const ASIDE = { top: 24, step: 58 };
/** A letter of the drawing, about. */
const LETTER = 8.2;

/** Corners, or quarter points, in the order of the check's items: as in the core's own axes, seen from above. */
const spots: Readonly<Record<NonNullable<Check["places"]>, readonly (readonly [number, number])[]>> = {
  corners: [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ],
  "quarter points": [
    [0, 0.5],
    [0.5, 0],
    [1, 0.5],
    [0.5, 1],
  ],
};

function spotOf(index: number, count: number, places: NonNullable<Check["places"]>): readonly [number, number] {
  const around = spots[places];
  const at = count === around.length ? around[index] : undefined;
  const [x, y] = at ?? [count === 1 ? 0.5 : index / (count - 1), 0.5];
  return [BASIN.left + x * BASIN.side, BASIN.top + y * BASIN.side];
}

interface SpotProps extends Pick<ThingProps, "title"> {
  readonly point: SetUpPoint;
  readonly isNow: boolean;
  readonly x: number;
  readonly y: number;
  readonly under: boolean;
}

function Spot({ point, isNow, x, y, under, title }: SpotProps) {
  const { fact } = point;
  const words = fact !== undefined ? String(fact.what.typed) : isNow ? title(point) : "";
  // words stay on the drawing, wherever their place lies
  const half = Math.min(WIDTH / 2, (words.length * LETTER) / 2);
  return (
    <g>
      <circle class={`spot ${fact === undefined ? "" : "taken"} ${isNow ? "now" : ""}`} cx={x} cy={y} r="13" />
      <text x={Math.min(WIDTH - half, Math.max(half, x))} y={under ? y + 31 : y - 19}>
        {words}
      </text>
    </g>
  );
}

/** The thing from above with its places: read ones filled and with what was read, the next one ringed. Marks and stakes stand aside. */
export function Thing({ check, points, now, title }: ThingProps) {
  const around = points.filter(({ item }) => check.items.includes(item.id));
  const aside = points.filter((point) => !around.includes(point));
  const places = check.places ?? "corners";
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} class="thing" aria-hidden="true">
      {places === "corners" || around.length !== 4 ? (
        <rect class="outline" x={BASIN.left} y={BASIN.top} width={BASIN.side} height={BASIN.side} />
      ) : (
        <circle class="outline" cx={BASIN.left + BASIN.side / 2} cy={BASIN.top + BASIN.side / 2} r={BASIN.side / 2} />
      )}
      {around.map((point, i) => {
        const [x, y] = spotOf(i, around.length, places);
        return <Spot key={point.item.id} point={point} isNow={points[now] === point} x={x} y={y} under={y >= HEIGHT / 2} title={title} />;
      })}
      {aside.length > 0 && <line class="outline" x1="40" x2="40" y1={ASIDE.top} y2={HEIGHT - 20} />}
      {aside.map((point, i) => (
        <Spot
          key={`${point.item.id} ${i === 0 ? "first" : "after"}`}
          point={point}
          isNow={points[now] === point}
          x={40}
          y={ASIDE.top + i * ASIDE.step}
          under={true}
          title={() => ""}
        />
      ))}
    </svg>
  );
}
