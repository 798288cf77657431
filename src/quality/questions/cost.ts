import { message } from "../../job/index.ts";
import { answering, cellOf, columns, grouped, jobsAsked, label, labelCell, row, sumOf, table, tooFewJobs } from "../answering.ts";
import { monthsDrawn } from "../by-month.ts";
import type { CallbackObserved, JobObserved } from "../observation.ts";
import type { Question } from "../question.ts";

const MINUTE_MS = 60_000;

/** What a set of jobs cost in the three ways: minutes, and parts in hundredths. */
export interface Costs {
  readonly jobs: number;
  /** Checking: the phones in hand. */
  readonly phone: number;
  /** Failure before handing over. */
  readonly rework: number;
  /** Failure after it: at the site, and on the way. */
  readonly callback: number;
  readonly callbacks: number;
  /** Parts less what was recovered, of those that the company bears. */
  readonly parts: number;
}

/** What the maker, the customer or others bear is no cost of the company's; who bears it unsaid is. */
const isOwn = ({ borneBy }: CallbackObserved): boolean => borneBy === undefined || borneBy === "company";

export function costsOf(jobs: readonly JobObserved[]): Costs {
  const callbacks = jobs.flatMap((job) => job.callbacks);
  return {
    jobs: jobs.length,
    phone: sumOf(jobs, ({ phoneTime }) => phoneTime) / MINUTE_MS,
    rework: sumOf(
      jobs.flatMap(({ reworks }) => reworks),
      ({ minutes }) => minutes,
    ),
    callback: sumOf(callbacks, ({ minutes = 0, travelMinutes = 0 }) => minutes + travelMinutes),
    callbacks: callbacks.length,
    parts: sumOf(callbacks, (one) => (isOwn(one) ? (one.partsCost ?? 0) : 0) - (one.recovered ?? 0)),
  };
}

const cells = ({ jobs, phone, rework, callbacks, callback, parts }: Costs) => [
  cellOf(jobs),
  cellOf(Math.round(phone)),
  cellOf(Math.round(rework)),
  cellOf(callbacks),
  cellOf(Math.round(callback)),
  cellOf(Math.round(parts)),
];

const heads = (first: "year" | "step") =>
  columns(`${first} label`, "jobs count", "phone minutes", "rework minutes", "callbacks count", "callback minutes", "parts-money money");

/** What prevention, checking and failure cost: what is entered, and nothing supposed. */
export const cost: Question = {
  id: "cost",
  reads: ["reworks", "callbacks"],
  answer: (observed, asking) => {
    const jobs = jobsAsked(observed, asking);
    const all = costsOf(jobs);
    const years = [...grouped(jobs, ({ installed }) => installed?.slice(0, 4))].sort(([a], [b]) => (a < b ? -1 : 1));
    const byMonth = [...grouped(jobs, ({ installed }) => installed?.slice(0, 7))].map(([month, own]) => ({
      month,
      hits: sumOf(own, ({ reworks }) => reworks.length),
      n: own.length,
    }));
    const each = (minutes: number): number => Math.round((minutes / Math.max(1, all.jobs)) * 10) / 10;
    const steps = [
      ...grouped(
        jobs.flatMap(({ reworks, sheet }) => reworks.map((one) => ({ ...one, sheet }))),
        ({ step, sheet }) => `${sheet}\n${step}`,
      ),
    ];
    const taught = observed.company.taught.filter(({ day }) => day >= (asking.from ?? "") && day <= (asking.to ?? asking.today)).length;
    return answering("cost", jobs.length, asking, {
      ...tooFewJobs(jobs.length),
      says: [
        message("cost.line", { taught, phone: each(all.phone), rework: each(all.rework), callback: each(all.callback) }),
        message("cost.money", { parts: Math.round(all.parts / 100), callbacks: all.callbacks }),
      ],
      tables: [
        table("cost-years", heads("year"), [
          ...years.map(([year, own]) => row([labelCell(label("text", year)), ...cells(costsOf(own))])),
          row([labelCell(label("word", "together")), ...cells(all)]),
        ]),
        table(
          "cost-months",
          columns("month label", "jobs count", "reworks count"),
          [...byMonth]
            .sort((a, b) => (a.month < b.month ? -1 : 1))
            .map(({ month, hits, n }) => row([labelCell(label("month", month)), cellOf(n), cellOf(hits)])),
        ),
        table(
          "cost-steps",
          columns("step label", "reworks count", "rework minutes"),
          steps
            .map(([key, own]) => ({ key, n: own.length, minutes: sumOf(own, ({ minutes }) => minutes) }))
            .sort((a, b) => b.minutes - a.minutes)
            .map(({ key, n, minutes }) => {
              const [sheet, step = ""] = key.split("\n");
              return row([labelCell(label("step", step, sheet)), cellOf(n), cellOf(Math.round(minutes))]);
            }),
        ),
      ],
      pictures: [
        ...monthsDrawn(byMonth, "u", { id: "reworks-months", table: "cost-months" }, observed.company.taught),
        {
          draws: "bars",
          id: "cost-together",
          table: "cost-years",
          axis: { kind: "minutes" },
          bars: [
            { label: label("word", "cost-checking"), value: Math.round(all.phone) },
            { label: label("word", "cost-rework"), value: Math.round(all.rework) },
            { label: label("word", "cost-callback"), value: Math.round(all.callback) },
          ],
        },
      ],
    });
  },
};
