import { useRef, useState } from "preact/hooks";
import type { Region } from "../../photo/index.ts";
import { useSpeaking } from "../parts/speaking.ts";
import { dragged, type MarkedPart, regionOf, type Spot, sides } from "./marked-parts.ts";

interface PictureProps {
  readonly address: string;
  readonly title: string;
  readonly parts: readonly MarkedPart[];
  readonly onDragged: (region: Region) => void;
}

const percent = (millionths: number): string => `${millionths / 10_000}%`;

function spotOf(event: PointerEvent): Spot {
  const box = (event.currentTarget as Element).getBoundingClientRect();
  return { x: (event.clientX - box.left) / box.width, y: (event.clientY - box.top) / box.height };
}

/** The picture with its marked parts over it; a drag from corner to corner marks one more. */
export function MarkedPicture({ address, title, parts, onDragged }: PictureProps) {
  const from = useRef<Spot | undefined>(undefined);
  const [drawn, setDrawn] = useState<Region>();
  const end = (): void => {
    from.current = undefined;
    setDrawn(undefined);
  };
  return (
    <div class="marked-picture">
      <img src={address} alt={title} draggable={false} />
      <svg
        aria-hidden="true"
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          (event.currentTarget as Element).setPointerCapture(event.pointerId);
          from.current = spotOf(event);
        }}
        onPointerMove={(event) => from.current && setDrawn(dragged(from.current, spotOf(event)))}
        onPointerUp={(event) => {
          const region = from.current && dragged(from.current, spotOf(event));
          end();
          if (region) onDragged(region);
        }}
        onPointerCancel={end}
      >
        {parts.map((part, index) => {
          const region = regionOf(part);
          return region && <Box key={part.key} region={region} number={index + 1} />;
        })}
        {drawn && <Box region={drawn} />}
      </svg>
    </div>
  );
}

const Box = ({ region: { x, y, width, height }, number }: { readonly region: Region; readonly number?: number }) => (
  <g>
    <rect class="under" x={percent(x)} y={percent(y)} width={percent(width)} height={percent(height)} />
    <rect x={percent(x)} y={percent(y)} width={percent(width)} height={percent(height)} />
    {number !== undefined && (
      <text x={percent(x + width / 2)} y={percent(y + height / 2)}>
        {number}
      </text>
    )}
  </g>
);

interface FieldsProps {
  readonly part: MarkedPart;
  readonly number: number;
  readonly onChange: (part: MarkedPart) => void;
  readonly onRemove: () => void;
}

/** One part in numbers, for a keyboard and to set right what was dragged. */
export function PartFields({ part, number, onChange, onRemove }: FieldsProps) {
  const { say } = useSpeaking();
  const told = `outside-${part.key}`;
  const isOutside = regionOf(part) === undefined;
  return (
    <fieldset class="marked-part">
      <legend>{say("blurring-part", { number })}</legend>
      {sides.map((side) => (
        <label key={side} class="typed">
          {say(`blurring-${side}`)}
          <input
            type="number"
            min="0"
            max="100"
            step="any"
            autoComplete="off"
            value={part[side]}
            aria-invalid={isOutside}
            aria-describedby={isOutside ? told : undefined}
            onInput={(event) => onChange({ ...part, [side]: event.currentTarget.value })}
          />
        </label>
      ))}
      <button type="button" class="target" onClick={onRemove}>
        {say("blurring-remove", { number })}
      </button>
      {isOutside && <p id={told}>{say("blurring-outside")}</p>}
    </fieldset>
  );
}
