import { type Entry, type JobState, jobState, type KitCard, type Typed } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { type DesignPageModel, designPageModel } from "#core/record/index.ts";
import { kitCards } from "#infra/demo/company.ts";
import { courtyard } from "#infra/demo/courtyard.ts";
import { bench, minute, start } from "./job.ts";

export interface PlannedJob {
  readonly title?: string;
  readonly ownNumber?: string;
  readonly address?: string;
  readonly language?: "en" | "es";
  readonly units?: "inch" | "metric";
  readonly figures?: Readonly<Record<string, Typed | "unknown">>;
  readonly kitCards?: readonly KitCard[];
  readonly switches?: Readonly<Record<string, boolean>>;
}

const switches = ["round-basin", "check-valve"].map((id) => ({ id, title: { en: id }, standard: false }));

/** A job that has been opened and designed, and nothing else. */
export function plannedState(job: PlannedJob = {}): JobState {
  const { title = "Bench fall", ownNumber, address, language = "en", units = "inch", kitCards: cards = [] } = job;
  const author = { person: "office", phone: "desk" };
  const entries: Entry[] = [];
  const enter = (kind: string, what: Json, who?: Json): void => {
    const [id, made] = [`${kind}-${entries.length + 1}`, start + entries.length * minute];
    const number = entries.length + 1;
    entries.push({ id, digest: id, kind, author, run: number, made, sent: made, received: made, number, what, ...(who ? { who } : {}) });
  };
  enter(
    "job-opened",
    { title, ...(ownNumber === undefined ? {} : { ownNumber }), zone: "America/New_York", language, units },
    address === undefined ? undefined : { address },
  );
  const contents = [["sheet", bench({ switches })], ...cards.map((card) => ["kit card", card] as const)] as const;
  for (const [i, [thing]] of contents.entries())
    enter("version-taken-over", { thing, name: `thing-${i}`, number: 1, digest: `${i}`.padStart(64, "0") });
  enter("design-set", { figures: (job.figures ?? {}) as unknown as Json, switches: job.switches ?? {} });
  const versions = contents.map(([, content], i) => [`${i}`.padStart(64, "0"), content as unknown as Json]);
  return jobState({ entries, versions: Object.fromEntries(versions) });
}

export const companySettings = {
  name: "Stillwater Yard Works",
  lines: ["4 Example Lane", "Telephone 555-0142"],
  zone: "America/New_York",
  units: "inch",
  language: "en",
} as const;

export const designPage = (job: PlannedJob = {}, settings: Json = companySettings): DesignPageModel =>
  designPageModel({ job: "job-one", state: plannedState(job), settings });

const typed = (text: string, unit: string): Typed => ({ typed: text, unit });

/** The demo's job with every number that the check asks for, in pipe that is too small and under a heavy lid. */
export const wholeJob: PlannedJob = {
  title: "Courtyard fall",
  ownNumber: "26-118",
  address: "12 Quarry Lane, Nowhere County",
  switches: { "round-basin": true, "check-valve": true },
  figures: {
    ...(courtyard.figures as Readonly<Record<string, Typed>>),
    pipeSize: typed("1 1/2", "in"),
    pipeRun: typed("40", "ft"),
    cordRoute: typed("17", "ft"),
    stoneDepth: typed("5", "in"),
    reserveWanted: typed("1000", "%"),
    waterInHole: typed("0", "in"),
  },
  kitCards: (kitCards as unknown as readonly KitCard[])
    .filter(({ id }) => courtyard.kitCards.includes(id))
    .map((card) => (card.id === "round-tank" ? { ...card, facts: { ...card.facts, lidLoad: typed("600", "lb") } } : card)),
};

/** The demo's own job, in which some numbers are missing. */
export const demoJob: PlannedJob = {
  ...wholeJob,
  figures: courtyard.figures as Readonly<Record<string, Typed>>,
  kitCards: (kitCards as unknown as readonly KitCard[]).filter(({ id }) => courtyard.kitCards.includes(id)),
};
