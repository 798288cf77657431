import type { Check, Item } from "../../../job/index.ts";
import type { SetUpPoint } from "./set-up-points.ts";

interface ThingProps {
  readonly places: NonNullable<Check["places"]>;
  readonly points: readonly SetUpPoint[];
  readonly mark: Item | undefined;
  /** Index of the point that comes next; -1 when all are read. */
  readonly now: number;
  readonly title: (point: SetUpPoint) => string;
}

const WIDTH = 340;
const HEIGHT = 240;
const BASIN = { left: 110, top: 40, side: 170 };

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

function spotOf(index: number, count: number, places: ThingProps["places"]): readonly [number, number] {
  const around = spots[places];
  const at = count === around.length ? around[index] : undefined;
  const [x, y] = at ?? [count === 1 ? 0.5 : index / (count - 1), 0.5];
  return [BASIN.left + x * BASIN.side, BASIN.top + y * BASIN.side];
}

/** The thing from above with its places: read ones filled and with what was read, the next one ringed. The stake with the mark stands aside. */
export function Thing({ places, points, mark, now, title }: ThingProps) {
  const own = points.filter(({ item }) => item !== mark);
  const marks = points.filter(({ item }) => item === mark);
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} class="thing" aria-hidden="true">
      {places === "corners" || own.length !== 4 ? (
        <rect class="outline" x={BASIN.left} y={BASIN.top} width={BASIN.side} height={BASIN.side} />
      ) : (
        <circle class="outline" cx={BASIN.left + BASIN.side / 2} cy={BASIN.top + BASIN.side / 2} r={BASIN.side / 2} />
      )}
      {own.map((point, i) => {
        const [x, y] = spotOf(i, own.length, places);
        const isNow = points[now] === point;
        return (
          <g key={point.item.id}>
            <circle class={`spot ${point.fact === undefined ? "" : "taken"} ${isNow ? "now" : ""}`} cx={x} cy={y} r="13" />
            <text x={x} y={y < HEIGHT / 2 ? y - 20 : y + 30}>
              {point.fact === undefined ? title(point) : String(point.fact.what.typed)}
            </text>
          </g>
        );
      })}
      {marks.length > 0 && (
        <g>
          <line class="outline" x1="40" x2="40" y1="90" y2="160" />
          <circle
            class={`spot ${marks.every(({ fact }) => fact !== undefined) ? "taken" : ""} ${points[now]?.item === mark ? "now" : ""}`}
            cx="40"
            cy="84"
            r="13"
          />
          {marks.map(({ fact }, i) => (
            <text key={i === 0 ? "first" : "last"} x="44" y={180 + i * 18}>
              {fact === undefined ? "" : String(fact.what.typed)}
            </text>
          ))}
        </g>
      )}
    </svg>
  );
}
