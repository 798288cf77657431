import { message } from "../../job/index.ts";
import {
  answering,
  type Candidate,
  cellOf,
  columns,
  grouped,
  jobsAsked,
  label,
  labelCell,
  row,
  standing,
  sumOf,
  table,
  tooFewJobs,
} from "../answering.ts";
import type { Carried } from "../carried.ts";
import { carriedOf } from "../carry/carried-of.ts";
import { equalCandidate, equalCorners, type RimOfJob } from "../carry/corners.ts";
import { heaping, heapingCandidate, LEAST_READINGS } from "../carry/heaping.ts";
import { usedAgain, usedAgainCandidate } from "../carry/pictures.ts";
import { sameSetCandidate, sameSets } from "../carry/same-set.ts";
import { timingCandidate, timings } from "../carry/timing.ts";
import type { JobObserved } from "../observation.ts";
import type { Label, Question, Table } from "../question.ts";

type By = "step" | "person";

interface CarriedJob extends Carried {
  readonly job: string;
}

/** As an edge has kept it, or from the whole rows. */
const carriedBy = ({ job, carried, readings, pictures }: JobObserved): CarriedJob => ({
  job,
  ...(carried ?? carriedOf(readings, pictures)),
});

const rimsOf = (jobs: readonly CarriedJob[]): readonly RimOfJob[] => jobs.flatMap(({ job, rims }) => rims.map((rim) => ({ ...rim, job })));

/** All judgements of one group of readings, and the row that shows them. */
function judged(jobs: readonly CarriedJob[], by: By): { readonly compared: readonly Candidate[]; readonly table: Table } {
  const all = jobs.flatMap(({ groups }) => groups);
  const groups = grouped(all, (group) => group[by]);
  const rims = grouped(rimsOf(jobs), (rim) => rim[by]);
  const times = timings(all, by);
  const named = (id: string): Label => label(by, id);
  const enough = times.filter(({ all }) => all >= LEAST_READINGS);
  const compared: Candidate[] = [];
  const rows = times.map((time) => {
    const [about, isEnough] = [named(time.key), time.all >= LEAST_READINGS];
    const heaped = heaping((groups.get(time.key) ?? []).map(({ nominal, onNominal, most }) => ({ n: nominal, hits: onNominal, most })));
    const equal = equalCorners(rims.get(time.key) ?? []);
    if (heaped.n >= LEAST_READINGS) compared.push(heapingCandidate(about, heaped));
    if (equal.n > 0 && isEnough) compared.push(equalCandidate(about, equal));
    if (isEnough && enough.length > 1 && by === "person")
      compared.push(
        timingCandidate(about, time, enough, "entered within seconds"),
        timingCandidate(about, time, enough, "entered after the covering"),
      );
    return row(
      [
        labelCell(about),
        ...[time.all, heaped.n, heaped.hits].map(cellOf),
        cellOf(Math.round(heaped.most * 10) / 10),
        ...[equal.n, equal.equal, time.within, time.after].map(cellOf),
      ],
      isEnough ? undefined : "too few to tell",
    );
  });
  const heads = columns(
    "about label",
    "readings count",
    "with-nominal count",
    "on-nominal count",
    "on-nominal-most number",
    "rims count",
    "rims-equal count",
    "within-seconds count",
    "after-covering count",
  );
  return { compared, table: table(`carry-nothing-${by}s`, heads, rows) };
}

const namedJobs = (jobs: readonly string[]): string => (jobs.length > 6 ? `${jobs.slice(0, 6).join(", ")} …` : jobs.join(", "));

/** Readings and pictures that carry no information: worth a look, and no proof of anything. */
export const carryNothing: Question = {
  id: "readings-that-carry-nothing",
  reads: ["readings", "pictures"],
  keeps: () => (job) => ({ ...job, carried: carriedOf(job.readings, job.pictures), readings: [], pictures: [] }),
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const carried = jobs.map(carriedBy);
    const steps = judged(carried, "step");
    const persons = asking.persons ? [judged(carried, "person")] : [];
    const same = sameSets(rimsOf(carried));
    const again = usedAgain(carried);
    const compared = [
      ...steps.compared,
      ...persons.flatMap(({ compared: own }) => own),
      sameSetCandidate(same),
      ...(again.length > 0 ? [usedAgainCandidate(again)] : []),
    ];
    const stands = standing(compared, asking.alpha);
    const titles = new Map(jobs.map(({ job, title }) => [job, title]));
    const jobsSaid = (of: readonly string[]) => cellOf(namedJobs(of.map((job) => titles.get(job) ?? job)));
    const readings = sumOf(carried, ({ groups }) => sumOf(groups, (group) => group.readings));
    const pictures = sumOf(carried, (job) => job.pictures.length);
    return answering("readings-that-carry-nothing", jobs.length, asking, {
      ...tooFewJobs(jobs.length),
      ...stands,
      says: [message(stands.signals.length > 0 ? "carry.some" : "carry.none", { signals: stands.signals.length })],
      counted: [message("counted.readings-pictures", { readings, pictures })],
      tables: [
        steps.table,
        ...persons.map(({ table: own }) => own),
        table(
          "same-sets",
          columns("step label", "jobs label", "typed label"),
          same.found.map(({ step, jobs: of, typed }) => row([labelCell(label("step", step)), jobsSaid(of), cellOf(typed)])),
        ),
        table(
          "pictures-again",
          columns("step label", "how word", "jobs-number count", "jobs label"),
          again.map(({ step, by, jobs: of }) =>
            row([
              labelCell(label("step", step)),
              cellOf(by === "same bytes" ? "same-bytes" : "looks-the-same"),
              cellOf(of.length),
              jobsSaid(of),
            ]),
          ),
        ),
      ],
    });
  },
};
