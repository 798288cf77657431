import { lineCurves } from "../../../job/index.ts";
import { gallonsPerMinute, litresPerMinute } from "../../../plumbing/index.ts";
import { feet } from "../../../units/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";

const WIDTH = 480;
const HEIGHT = 300;
const frame = { left: 46, right: 464, top: 14, bottom: 254 } as const;

/** Ends of an axis at 1, 2 or 5 times a power of ten, in four to eight parts. */
function partsOf(most: number): readonly number[] {
  const rough = most / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((one) => one * power >= rough) ?? 10) * power;
  return Array.from({ length: Math.ceil(most / step) + 1 }, (_, i) => i * step);
}

const plain = (value: number): string => String(Number(value.toPrecision(3)));

/** The pump's curve through the points as they are typed; nothing while there are fewer than two. */
export function Curve({ text }: { readonly text: string }) {
  const { say, session } = useSpeaking();
  const curves = lineCurves(
    { design: { figures: {}, switches: {} }, kitCards: [{ id: "typed", part: "", facts: { pumpCurve: text } }] },
    {},
  );
  const { pump } = curves;
  if (pump === undefined || pump.card.length < 2) return null;
  const inch = session.units === "inch";
  const units = inch ? ({ flow: "gpm", head: "ft" } as const) : ({ flow: "L/min", head: "m" } as const);
  const per = { flow: inch ? gallonsPerMinute(1) : litresPerMinute(1), head: inch ? feet(1) : 1 };
  const card = pump.card.map(({ flow, head }) => ({ flow: flow / per.flow, head: head / per.head }));
  const flows = partsOf(Math.max(...card.map(({ flow }) => flow)));
  const heads = partsOf(Math.max(...card.map(({ head }) => head)));
  const x = (flow: number): number => frame.left + ((frame.right - frame.left) * flow) / (flows.at(-1) ?? 1);
  const y = (head: number): number => frame.bottom - ((frame.bottom - frame.top) * head) / (heads.at(-1) ?? 1);
  const path = pump.stretches
    .flat()
    .map(({ flow, head }, i) => `${i === 0 ? "M" : "L"}${x(flow / per.flow).toFixed(1)} ${y(head / per.head).toFixed(1)}`)
    .join("");
  const points = card.map(({ flow, head }) => `${plain(flow)} ${units.flow} ${plain(head)} ${units.head}`).join("; ");
  return (
    <figure>
      <svg class="curve" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={say("kits-curve-says", { points })}>
        {flows.map((flow) => (
          <g key={`flow ${flow}`}>
            <path class="grid" d={`M${x(flow)} ${frame.top}V${frame.bottom}`} />
            <text x={x(flow)} y={frame.bottom + 15} text-anchor="middle">
              {plain(flow)}
            </text>
          </g>
        ))}
        {heads.map((head) => (
          <g key={`head ${head}`}>
            <path class="grid" d={`M${frame.left} ${y(head)}H${frame.right}`} />
            <text x={frame.left - 6} y={y(head) + 4} text-anchor="end">
              {plain(head)}
            </text>
          </g>
        ))}
        <path class="axis" d={`M${frame.left} ${frame.top}V${frame.bottom}H${frame.right}`} />
        <text x={frame.right} y={frame.bottom + 32} text-anchor="end">
          {units.flow}
        </text>
        <text x={8} y={frame.top + 6}>
          {units.head}
        </text>
        <path class="line" d={path} />
        {card.map(({ flow, head }) => (
          <circle key={`${flow} ${head}`} class="axis" cx={x(flow)} cy={y(head)} r="4" />
        ))}
      </svg>
      <figcaption>{say("kits-curve")}</figcaption>
    </figure>
  );
}
