import { certain, resolutionUncertainty, type Uncertain, withSource } from "../../doubt/index.ts";
import { type Outcome, ok, refuse } from "../../outcome/index.ts";
import {
  type CanTimes,
  type CementTableName,
  type CureClock,
  cureClock,
  type Humidity,
  type JointKind,
  type JointTimes,
  jointTimes,
  type PipeLining,
} from "../../plumbing/index.ts";
import { readQuantity } from "../../reading/index.ts";
import { fixedPerSi } from "../../units/index.ts";
import type { FigureSource } from "../figures.ts";
import { lining, size } from "./line-figures.ts";
import { statedBy } from "./stated.ts";

/** What was typed of one glue session; pipe size and kind come from the design where it says nothing of its own. */
export interface SessionTyped {
  /** Coldest of air and pipe since the first joint: as typed, or already with its doubt in °C. */
  readonly coldest?: { readonly typed: string; readonly unit: string } | Uncertain;
  readonly kind?: JointKind;
  /** Not said counts as humid. */
  readonly humidity?: Humidity;
  /** The can's own times, milliseconds. */
  readonly can?: CanTimes;
  /** The company's table; the pipe maker's (A) where it chose none. */
  readonly table?: CementTableName;
}

export interface CoveredSession extends JointTimes, CureClock {}

const kindOf: Readonly<Record<PipeLining, JointKind>> = {
  "rigid PVC": "rigid PVC",
  "flexible PVC, smooth bore": "flexible PVC",
  "flexible, ribbed bore": "flexible PVC",
};

function temperature(coldest: NonNullable<SessionTyped["coldest"]>): Outcome<Uncertain> {
  if ("parts" in coldest) return ok(coldest);
  const read = readQuantity(coldest.typed, { kind: "temperature", unit: coldest.unit, place: "cure/coldest" });
  if (!read.ok) return read;
  const perSi = fixedPerSi("temperature");
  return ok(
    withSource(certain(read.value.value / perSi), "reading:coldest/resolution", resolutionUncertainty(read.value.resolution / perSi)),
  );
}

/**
 * Times from the last joint of a session until it may be filled around (set) and until water (cure), milliseconds. The can's own
 * times go before any table; without them flexible pipe has none. A pipe kind that neither session nor design gives is asked for:
 * `cure-time-unknown`. Only + − × ÷ and a square root.
 */
export function cureTimes(source: FigureSource, session: SessionTyped): Outcome<JointTimes> {
  const stated = statedBy(source);
  const nominal = size(stated);
  const pipe = lining(stated);
  if (!nominal.known) return nominal.refusal ? { ok: false, refusal: nominal.refusal } : refuse("cure-time-unknown", "figures/pipeSize");
  if (!pipe.known) return pipe.refusal ? { ok: false, refusal: pipe.refusal } : refuse("cure-time-unknown", "figures/pipeKind");
  const stands = pipe.assumes.includes("pipeKind") ? undefined : kindOf[pipe.value];
  const kind = session.kind ?? stands;
  if (kind === undefined && session.can === undefined) return refuse("cure-time-unknown", "figures/pipeKind");
  if (session.coldest === undefined && session.can === undefined) return refuse("cure-time-unknown", "cure/coldest");
  const coldest = session.coldest === undefined ? ok(certain(0)) : temperature(session.coldest);
  if (!coldest.ok) return coldest;
  return jointTimes({
    kind: kind ?? "flexible PVC",
    size: nominal.value,
    coldest: coldest.value,
    humidity: session.humidity ?? "not known",
    ...(session.can && { can: session.can }),
    ...(session.table && { table: session.table }),
  });
}

/** The same with the instants from which it is set and cured, milliseconds since 1970, from the last joint made. */
export function cureClockOf(source: FigureSource, session: SessionTyped, lastJointAt: number): Outcome<CoveredSession> {
  const times = cureTimes(source, session);
  if (!times.ok) return times;
  const clock = cureClock(lastJointAt, times.value);
  return clock.ok ? ok({ ...times.value, ...clock.value }) : clock;
}
