import { useRef } from "preact/hooks";
import { useSpeaking } from "../../parts/speaking.ts";
import { calledOut, type Marks, markLength, scales } from "./marks.ts";

interface TapeProps {
  readonly marks: Marks;
  /** Marks from the tape's end; undefined while nothing was touched. */
  readonly value: number | undefined;
  readonly onChange: (value: number) => void;
  readonly label: string;
}

const WIDTH = 340;
/** Of the inch strip: numbered ones that are seen at once. */
const SEEN = 10;

const whole = (value: number, perNumber: number): number => Math.floor(value / perNumber);

/** Where in a strip somebody touched, 0 to 1. */
function shareOf(event: PointerEvent): number {
  const { left, width } = (event.currentTarget as Element).getBoundingClientRect();
  return Math.min(1, Math.max(0, (event.clientX - left) / width));
}

/** The whole tape, small: touched, it is pulled to about there. */
function WholeTape({ marks, value = 0, onChange }: TapeProps) {
  const { perNumber, perLarge, longest } = scales[marks];
  const larges = Array.from({ length: Math.floor(longest / perLarge) + 1 }, (_, i) => i);
  const every = larges.length > 20 ? 5 : 1;
  const at = (number: number): number => (number / longest) * WIDTH;
  return (
    <svg
      viewBox={`0 0 ${WIDTH} 56`}
      class="strip"
      aria-hidden="true"
      onPointerDown={(event) => onChange(Math.round(shareOf(event) * longest) * perNumber)}
    >
      <rect class="band" x="0" y="8" width={WIDTH} height="40" />
      {larges.map((large) => (
        <g key={large}>
          <line x1={at(large * perLarge)} x2={at(large * perLarge)} y1="8" y2={large % every === 0 ? 30 : 20} />
          {large % every === 0 && large > 0 && (
            <text x={at(large * perLarge) - 2} y="44" class="small end">
              {perLarge === 12 ? `${large}'` : large * 10}
            </text>
          )}
        </g>
      ))}
      <path class="hand" d={`M${at(whole(value, perNumber))} 8 l-6 -8 h12 z`} />
    </svg>
  );
}

/** Ten numbered ones about the place: pulled along, or touched. */
function Numbers({ marks, value = 0, onChange }: TapeProps) {
  const { perNumber, perLarge, longest } = scales[marks];
  const pull = useRef<{ readonly x: number; readonly from: number; moved: boolean } | undefined>(undefined);
  const number = whole(value, perNumber);
  const first = Math.min(Math.max(0, number - SEEN / 2), longest - SEEN);
  const step = WIDTH / SEEN;
  const to = (next: number): void => onChange(Math.min(longest - 1, Math.max(0, next)) * perNumber + (value % perNumber));
  return (
    <svg
      viewBox={`0 0 ${WIDTH} 76`}
      class="strip"
      aria-hidden="true"
      onPointerDown={(event) => {
        (event.currentTarget as Element).setPointerCapture(event.pointerId);
        pull.current = { x: event.clientX, from: number, moved: false };
      }}
      onPointerMove={(event) => {
        const start = pull.current;
        if (start === undefined) return;
        const by = Math.round(((start.x - event.clientX) / (event.currentTarget as Element).getBoundingClientRect().width) * SEEN);
        if (by !== 0) start.moved = true;
        if (start.moved) to(start.from + by);
      }}
      onPointerUp={(event) => {
        const start = pull.current;
        pull.current = undefined;
        if (start !== undefined && !start.moved) to(first + Math.floor(shareOf(event) * SEEN));
      }}
      onPointerCancel={() => {
        pull.current = undefined;
      }}
    >
      <rect class="band" x="0" y="4" width={WIDTH} height="68" />
      {Array.from({ length: SEEN + 1 }, (_, i) => first + i).map((n) => (
        <g key={n}>
          <line x1={(n - first) * step} x2={(n - first) * step} y1="4" y2={n % perLarge === 0 ? 40 : 28} />
          <text x={(n - first) * step + 5} y="58" class={n % perLarge === 0 ? "large" : ""}>
            {n % perLarge === 0 && perLarge === 12 && n > 0 ? `${n / 12}'` : n}
          </text>
        </g>
      ))}
      <rect class="chosen" x={(number - first) * step + 1} y="5" width={step - 2} height="66" />
    </svg>
  );
}

/** One inch, or one centimetre, as wide as the screen: its marks, touched. */
function OneNumber({ marks, value, onChange }: TapeProps) {
  const { perNumber } = scales[marks];
  const number = whole(value ?? 0, perNumber);
  const edge = 14;
  const step = (WIDTH - 2 * edge) / perNumber;
  const touch = (event: PointerEvent): void => {
    const mark = Math.round((shareOf(event) * WIDTH - edge) / step);
    onChange(number * perNumber + Math.min(perNumber, Math.max(0, mark)));
  };
  const own = value === undefined ? undefined : value - number * perNumber;
  return (
    <svg
      viewBox={`0 0 ${WIDTH} 128`}
      class="strip"
      aria-hidden="true"
      onPointerDown={(event) => {
        (event.currentTarget as Element).setPointerCapture(event.pointerId);
        touch(event);
      }}
      onPointerMove={(event) => event.buttons > 0 && touch(event)}
    >
      <rect class="band" x="0" y="4" width={WIDTH} height="120" />
      {Array.from({ length: perNumber + 1 }, (_, i) => i).map((i) => (
        <line
          key={i}
          class={i === own ? "read" : ""}
          x1={edge + i * step}
          x2={edge + i * step}
          y1="4"
          y2={4 + 84 * markLength(marks, number * perNumber + i)}
        />
      ))}
      <text x={edge} y="116" class="large middle">
        {number}
      </text>
      <text x={WIDTH - edge} y="116" class="large middle">
        {number + 1}
      </text>
      {own !== undefined && <path class="hand" d={`M${edge + own * step} ${8 + 84 * markLength(marks, value ?? 0)} l-9 22 h18 z`} />}
    </svg>
  );
}

const steps: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };

/** A drawn tape: pulled to the foot and inch, touched at the mark. The keys of a keyboard move it mark by mark and inch by inch. */
export function Tape(props: TapeProps) {
  const { say } = useSpeaking();
  const { marks, value, onChange, label } = props;
  const { perNumber, longest } = scales[marks];
  const by = (step: number): void => onChange(Math.min(longest * perNumber, Math.max(0, (value ?? 0) + step)));
  const key = (event: KeyboardEvent): void => {
    const step = event.key === "PageUp" ? perNumber : event.key === "PageDown" ? -perNumber : steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    by(step);
  };
  return (
    <div class="tape">
      <div
        role="slider"
        tabIndex={0}
        aria-label={label}
        aria-valuemin={0}
        aria-valuemax={longest * perNumber}
        aria-valuenow={value ?? 0}
        aria-valuetext={value === undefined ? say("tape-nothing") : calledOut(marks, value)}
        onKeyDown={key}
      >
        <WholeTape {...props} />
        <Numbers {...props} />
        <OneNumber {...props} />
      </div>
      <div class="tape-by">
        <button type="button" class="target" aria-label={say("tape-less")} onClick={() => by(-1)}>
          −
        </button>
        <output class="tape-value">{value === undefined ? say("tape-nothing") : calledOut(marks, value)}</output>
        <button type="button" class="target" aria-label={say("tape-more")} onClick={() => by(1)}>
          +
        </button>
      </div>
    </div>
  );
}
