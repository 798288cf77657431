import { add, certain, rectangular, scale, type Uncertain, withSource } from "../../doubt/index.ts";
import { type Outcome, ok, refuse } from "../../outcome/index.ts";
import {
  type DarcyLoss,
  type DrainBack,
  darcyLoss,
  drainBack,
  equivalentRun,
  type FittingKind,
  frictionInSeries,
  type OperatingOutcome,
  operatingPoint,
  type PipeLining,
  type PipeSize,
  type PipeVelocity,
  type PumpCurve,
  pipeBore,
  pipeCoefficient,
  pipeContents,
  pipeSizeOf,
  pipeVelocity,
  pumpCurve,
  type SystemCurve,
} from "../../plumbing/index.ts";
import { andThen, fromOutcome, type Known, known, orAssume, orElse, pick, statedOr, together, work } from "./known.ts";
import { pumpPoints } from "./pump-points.ts";
import type { Stated } from "./stated.ts";
import { FLEXIBLE_BORE_SHARE, type NumberKey } from "./vocabulary.ts";

/** Words of a kit card or a design, in English and Spanish, by which a kind of pipe is known. A ribbed one is flexible too. */
const kindsByWord: readonly (readonly [RegExp, PipeLining])[] = [
  [/ribbed|corrugat|corrugad/i, "flexible, ribbed bore"],
  [/flex/i, "flexible PVC, smooth bore"],
  [/rigid|rígid|sch|cédula|cedula/i, "rigid PVC"],
];

function liningOf(text: string): Outcome<PipeLining> {
  const found = kindsByWord.find(([word]) => word.test(text));
  return found ? ok(found[1]) : refuse("pipe-kind-unknown", "figures/pipeKind", { found: text });
}

export const lining = (stated: Stated): Known<PipeLining> => orAssume(work(stated.text("pipeKind"), liningOf), "pipeKind", "rigid PVC");

export const size = (stated: Stated): Known<PipeSize> => work(stated.number("pipeSize"), ({ value }) => pipeSizeOf(value));

/** Bore: as stated; else of rigid pipe of the size, with its own doubt more where the pipe is flexible. */
export function bore(stated: Stated): Known<Uncertain> {
  const bySize = () =>
    andThen(together({ size: size(stated), kind: lining(stated) }), ({ size: nominal, kind }) => {
      const rigid = fromOutcome(pipeBore(nominal));
      if (!rigid.known || kind === "rigid PVC") return rigid;
      const wider = withSource(rigid.value, "own:flexible-bore", rectangular(FLEXIBLE_BORE_SHARE * rigid.value.value));
      return known(wider, ["pipeBore"]);
    });
  return statedOr(stated.number("pipeBore"), bySize);
}

export const coefficient = (stated: Stated): Known<Uncertain> =>
  andThen(lining(stated), (kind) =>
    orElse(
      work(stated.number("pipeCoefficient"), ({ value }) => pipeCoefficient(kind, value)),
      () => fromOutcome(pipeCoefficient(kind)),
    ),
  );

const fittingKeys = {
  elbows90: "90 ell",
  elbows45: "45 ell",
  teesRun: "tee, run",
  teesBranch: "tee, branch",
  gateValves: "gate valve",
  adapters: "adapter",
} as const satisfies Partial<Record<NumberKey, FittingKind>>;

/** Pipe and fittings as one length of pipe, m. No bend counted: the run counts alone, and says so. A check valve counts as a swing one. */
export function run(stated: Stated, checkValve: boolean): Known<Uncertain> {
  const keys = Object.keys(fittingKeys) as (keyof typeof fittingKeys)[];
  const counts = keys.flatMap((key) => {
    const count = stated.number(key);
    return count.known ? [{ kind: fittingKeys[key] as FittingKind, count: count.value.value }] : [];
  });
  const parts = together({
    pipe: stated.number("pipeRun"),
    size: size(stated),
    bends: orAssume(stated.number("elbows90"), "elbows90", certain(0)),
  });
  const valve = checkValve ? [{ kind: "swing check valve" as FittingKind, count: 1 }] : [];
  return work(parts, ({ pipe, size: nominal }) => {
    const withValve = equivalentRun(pipe, [...counts, ...valve], nominal);
    // no table has a check valve of every size
    return withValve.ok || !checkValve ? withValve : equivalentRun(pipe, counts, nominal);
  });
}

/** What the pump works against. */
export function system(stated: Stated, checkValve: boolean): Known<SystemCurve> {
  const losses = together({ head: stated.number("knownLoss"), flow: stated.number("knownLossFlow") });
  const parts = together({
    staticHead: stated.number("staticHead"),
    length: run(stated, checkValve),
    bore: bore(stated),
    coefficient: coefficient(stated),
  });
  return pick(parts, ({ staticHead, ...section }) => {
    const curve: SystemCurve = { staticHead, sections: [section] };
    return losses.known ? { ...curve, knownLosses: [{ head: losses.value.head, flow: losses.value.flow.value }] } : curve;
  });
}

export const curve = (stated: Stated): Known<PumpCurve> =>
  work(stated.text("pumpCurve"), (text) => {
    const points = pumpPoints(text);
    return points.ok ? pumpCurve(points.value) : points;
  });

/** Where the pump works on this system; `flow` m³/s and `head` m where there is one to go on with. */
export interface Working {
  readonly outcome: OperatingOutcome;
  readonly flow?: Uncertain;
  readonly head?: Uncertain;
}

const byCard = (flow: number, share: number): Uncertain => withSource(certain(flow), "pump-curve/flow", rectangular(share * flow));

function goOnWith(outcome: OperatingOutcome, along: number): Pick<Working, "flow" | "head"> {
  switch (outcome.kind) {
    case "one point":
      return outcome.point;
    case "several crossings": {
      // of several, the least flow that it keeps
      const point = outcome.points.find(({ stable }) => stable) ?? outcome.points[0];
      return point ?? {};
    }
    case "on a vertical piece":
      return { flow: byCard(outcome.piece.flow, along), head: outcome.head };
    case "beyond the last point":
      return { flow: byCard(outcome.atLeast, along), head: outcome.headThere };
    case "curve below static head":
      return { flow: certain(0) };
    case "before the first point":
      return {};
  }
}

export const working = (stated: Stated, checkValve: boolean): Known<Working> =>
  work(together({ curve: curve(stated), system: system(stated, checkValve) }), ({ curve: card, system: against }) => {
    const outcome = operatingPoint(card, against);
    return outcome.ok ? ok({ outcome: outcome.value, ...goOnWith(outcome.value, card.tolerance.flow) }) : outcome;
  });

/** Friction at a flow, m, by Hazen-Williams and known losses beside it. */
export const friction = (stated: Stated, checkValve: boolean, flow: Uncertain): Known<Uncertain> =>
  work(system(stated, checkValve), ({ sections, knownLosses = [] }) => {
    const pipe = frictionInSeries(flow, sections);
    if (!pipe.ok) return pipe;
    return ok(knownLosses.reduce((sum, loss) => add(sum, scale(loss.head, (flow.value / loss.flow) ** 2)), pipe.value));
  });

/** The pipe's friction by Darcy-Weisbach with Colebrook, m: the independent second, for smooth pipe. */
export const frictionDarcy = (stated: Stated, checkValve: boolean, flow: Uncertain): Known<DarcyLoss> =>
  work(together({ length: run(stated, checkValve), bore: bore(stated) }), (pipe) => darcyLoss(flow, pipe));

export const velocity = (stated: Stated, flow: Uncertain): Known<PipeVelocity> =>
  work(bore(stated), (across) => pipeVelocity(flow, across));

export const contents = (stated: Stated): Known<Uncertain> =>
  work(together({ bore: bore(stated), length: stated.number("pipeRun") }), (pipe) => pipeContents(pipe.bore, pipe.length));

const drainage = (stated: Stated, toCheckValve: Known<Uncertain> | undefined): Known<DrainBack> => {
  const line = together({
    bore: bore(stated),
    length: stated.number("pipeRun"),
    belowWater: orAssume(stated.number("pipeBelowWater"), "pipeBelowWater", certain(0)),
  });
  if (toCheckValve === undefined) return work(line, drainBack);
  return work(together({ line, toCheckValve }), ({ line: pipe, toCheckValve: valve }) => drainBack({ ...pipe, toCheckValve: valve }));
};

/** What runs back into the basin when the pump stops, m³. A check valve whose place nobody gave sits at the pump. */
export function runsBack(stated: Stated, checkValve: boolean): Known<Uncertain> {
  if (!checkValve) return pick(drainage(stated, undefined), ({ withoutCheckValve }) => withoutCheckValve);
  const distance = orAssume(stated.number("checkValveDistance"), "checkValveDistance", certain(0));
  return pick(drainage(stated, distance), ({ withCheckValve, withoutCheckValve }) => withCheckValve ?? withoutCheckValve);
}
