import { certain, expanded, scale, subtract, type Uncertain } from "../../doubt/index.ts";
import { nextPipeSize, nominalInches, type PipeSize } from "../../plumbing/index.ts";
import { inches } from "../../units/index.ts";
import type { DesignMessage } from "./design-line.ts";
import { nearestEnough, roomState, said } from "./design-message.ts";
import { ifKnown } from "./known.ts";
import { size, velocity, working } from "./line-figures.ts";
import { wanted } from "./spillway-figures.ts";
import type { Stated } from "./stated.ts";

const flowOf = (stated: Stated, checkValve: boolean): Uncertain | undefined => ifKnown(working(stated, checkValve))?.flow;

function isEnough(stated: Stated, checkValve: boolean, asked: Uncertain): boolean {
  const flow = flowOf(stated, checkValve);
  return flow !== undefined && roomState(subtract(flow, asked), "flow") === "enough";
}

/** Larger sizes, smallest first, each with the design as it would be. A bore that the card gives goes with the old size. */
function largerSizes(stated: Stated): readonly { readonly name: PipeSize; readonly design: Stated }[] {
  const larger: { name: PipeSize; design: Stated }[] = [];
  const own = ifKnown(size(stated));
  for (let name = own && nextPipeSize(own); name !== undefined; name = nextPipeSize(name))
    larger.push({ name, design: stated.instead({ pipeSize: certain(inches(nominalInches[name])) }).without("pipeBore") });
  return larger;
}

interface LargerSize {
  readonly name: PipeSize;
  readonly design: Stated;
  readonly enough: boolean;
  readonly flow: number;
}

/** The larger sizes that bring more: the next, the smallest that is enough, the one that brings most. */
function sizesThatHelp(stated: Stated, checkValve: boolean, asked: Uncertain) {
  const now = flowOf(stated, checkValve)?.value ?? 0;
  const sizes = largerSizes(stated)
    .map(
      (size): LargerSize => ({
        ...size,
        enough: isEnough(size.design, checkValve, asked),
        flow: flowOf(size.design, checkValve)?.value ?? 0,
      }),
    )
    .filter(({ flow }) => flow > now);
  return {
    next: sizes[0],
    enough: sizes.find((size) => size.enough),
    best: sizes.reduce<LargerSize | undefined>((a, b) => (a && a.flow >= b.flow ? a : b), undefined),
  };
}

/** What the next size would bring; then the smallest with which it is enough or, where none is, the one that brings most. */
function sizeAdvice(stated: Stated, checkValve: boolean, asked: Uncertain): readonly DesignMessage[] {
  const { next, enough, best } = sizesThatHelp(stated, checkValve, asked);
  const to = (key: string, { name, flow }: LargerSize) => said(`design.advice.${key}`, { size: `${name} in`, flow: ["flow", flow] });
  return [
    ...(next === undefined || next === enough ? [] : [to("next-size", next)]),
    ...(enough === undefined ? [] : [to("size-enough", enough)]),
    ...(enough === undefined && best !== undefined && best !== next ? [to("size-not-enough", best)] : []),
  ];
}

/** The size that the advice comes to where the flow is not surely enough; undefined where it is, or where no size brings more. */
export function advisedSize(stated: Stated, checkValve: boolean): Pick<LargerSize, "name" | "design"> | undefined {
  const asked = ifKnown(wanted(stated));
  if (asked === undefined || isEnough(stated, checkValve, asked)) return undefined;
  const { enough, best } = sizesThatHelp(stated, checkValve, asked);
  return enough ?? best;
}

/** How much shorter the run would have to be, all else as it is. */
function runAdvice(stated: Stated, checkValve: boolean, asked: Uncertain): readonly DesignMessage[] {
  const run = ifKnown(stated.number("pipeRun"));
  if (run === undefined) return [];
  const share = nearestEnough(1, 0, (of) => isEnough(stated.instead({ pipeRun: scale(run, of) }), checkValve, asked));
  if (share === undefined) return [];
  const length = share * run.value;
  return [said("design.advice.shorter-run", { run: ["length", length], shorter: ["length", run.value - length] })];
}

/** How much lower the lip would have to stand. */
function headAdvice(stated: Stated, checkValve: boolean, asked: Uncertain): readonly DesignMessage[] {
  const head = ifKnown(stated.number("staticHead"));
  if (head === undefined) return [];
  const lowered = (share: number): Uncertain => subtract(head, certain((1 - share) * head.value));
  const share = nearestEnough(1, 0, (of) => isEnough(stated.instead({ staticHead: lowered(of) }), checkValve, asked));
  if (share === undefined) return [];
  return [said("design.advice.lower-lip", { head: ["length", share * head.value], lower: ["length", (1 - share) * head.value] })];
}

/** The width of spillway that this flow surely serves. */
function widthAdvice(stated: Stated, checkValve: boolean): readonly DesignMessage[] {
  const [flow, perLip] = [flowOf(stated, checkValve), ifKnown(stated.number("flowPerInch"))];
  if (flow === undefined || perLip === undefined || ifKnown(stated.number("flowWanted")) !== undefined) return [];
  const width = (flow.value - expanded(flow)) / perLip.value;
  return width > 0 ? [said("design.advice.narrower-lip", { width: ["length", width] })] : [];
}

/** What to change where the flow is not surely enough: pipe, run, then the lip's height and width. */
export function flowAdvice(stated: Stated, checkValve: boolean): readonly DesignMessage[] {
  const asked = ifKnown(wanted(stated));
  if (asked === undefined) return [];
  return [
    ...sizeAdvice(stated, checkValve, asked),
    ...runAdvice(stated, checkValve, asked),
    ...headAdvice(stated, checkValve, asked),
    ...widthAdvice(stated, checkValve),
  ];
}

/** The smallest size in which the water keeps below the guidance, at the flow that the pump then gives. */
export function velocityAdvice(stated: Stated, checkValve: boolean, reckoned: Uncertain): readonly DesignMessage[] {
  for (const { name, design } of largerSizes(stated)) {
    const found = ifKnown(velocity(design, flowOf(design, checkValve) ?? reckoned));
    if (found?.against === "below")
      return [said("design.advice.size-for-velocity", { size: `${name} in`, velocity: ["velocity", found.velocity.value] })];
  }
  return [];
}
