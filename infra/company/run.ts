import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import {
  type AnswerView,
  answerView,
  type JobObserved,
  type Observed,
  qualitySpeaking,
  questions,
  usualAsking,
} from "#core/quality/index.ts";
import { companyByLedgers, dayOf } from "./by-ledgers.ts";
import { companyFrom, today } from "./draw.ts";
import { planted, plantedWords } from "./effects.ts";
import { questionsSheet } from "./sheet.ts";

export interface CompaniesPlan {
  readonly edge: string;
  readonly operatorKey: string;
  readonly log: (line: string) => void;
  readonly folder: string;
  /** The large company comes in through archives, with so many jobs. */
  readonly jobs?: number;
}

const SMALL = { seed: 60, jobs: 60 } as const;
const LARGE = { seed: 10_000, jobs: 10_000 } as const;

const json = (value: unknown): string => `${JSON.stringify(value, undefined, 2)}\n`;

/** The small company by its ledgers. */
async function small(plan: CompaniesPlan): Promise<void> {
  const drawing = { ...SMALL, effects: planted(SMALL.jobs), ends: dayOf(Date.now()) };
  const { owner } = await companyByLedgers(plan, drawing, { id: "sixty-jobs", name: "Sixty Jobs (made up)" });
  const answers: unknown[] = [];
  for (const { id } of questions) answers.push(await owner.get(`/api/questions/${id}?persons=yes`));
  await writeFile(join(plan.folder, "small.json"), json({ jobs: SMALL.jobs, planted: plantedWords(drawing.effects), answers }));
  await writeFile(join(plan.folder, "small-report.pdf"), await owner.bytes("/api/report"));
  plan.log(`${SMALL.jobs} jobs: small.json and small-report.pdf`);
}

const named = ({ jobs }: Observed): Readonly<Record<string, string>> => Object.fromEntries(jobs.map(({ job, title }) => [job, title]));

interface LargeAnswered {
  readonly id: string;
  readonly milliseconds: number;
  readonly view: { readonly tooFew: string; readonly signals: readonly string[]; readonly pictures: number };
}

async function largeWritten(
  { log, folder }: CompaniesPlan,
  { jobs }: Observed,
  made: string,
  answers: readonly LargeAnswered[],
): Promise<void> {
  const count = (of: (job: JobObserved) => number): number => jobs.reduce((sum, job) => sum + of(job), 0);
  const [readings, pictures] = [count((job) => job.readings.length), count((job) => job.pictures.length)];
  const effects = plantedWords(planted(jobs.length));
  await writeFile(join(folder, "large.json"), json({ jobs: jobs.length, readings, pictures, made, planted: effects, answers }));
  log(`${jobs.length} jobs (${readings} readings, ${pictures} photo facts; ${made}): large.json`);
  for (const { id, milliseconds, view } of answers)
    log(`  ${id} in ${milliseconds} ms: ${[view.tooFew, ...view.signals].filter(Boolean).join(" | ") || "nothing stands out"}`);
}

/** The large company by its rows: its ledgers take their time to be verified, and `jobs` asks for them. */
async function large(plan: CompaniesPlan): Promise<void> {
  const { jobs } = plan;
  if (jobs !== undefined) return largeByLedgers(plan, jobs);
  const effects = planted(LARGE.jobs);
  const observed = companyFrom({ ...LARGE, effects });
  const sheet = questionsSheet() as never;
  const speaking = qualitySpeaking(
    { language: "en", units: "inch" },
    { people: {}, jobs: named(observed), sheets: { sheet }, instruments: {} },
  );
  const asking = { ...usualAsking(today), persons: true };
  const answers = questions.map((question) => {
    const began = performance.now();
    const answer = question.answer(observed, asking);
    const milliseconds = Math.round(performance.now() - began);
    const view = answerView(answer, speaking);
    // a picture of 10,000 points is for the screen; the file has its table
    return { id: question.id, milliseconds, signals: answer.signals, view: { ...view, pictures: view.pictures.length } };
  });
  await largeWritten(plan, observed, "filled as rows, not through archives", answers);
}

/** The same through archives, or a smaller one: every ledger verified, then asked through the public API. */
async function largeByLedgers(plan: CompaniesPlan, jobs: number): Promise<void> {
  const drawing = { ...LARGE, jobs, effects: planted(jobs), ends: dayOf(Date.now()) };
  const { owner, observed, seconds } = await companyByLedgers(plan, drawing, { id: "large", name: "Ten Thousand Jobs (made up)" });
  const answers: LargeAnswered[] = [];
  for (const { id } of questions) {
    const began = performance.now();
    const { view } = await owner.get<{ view: AnswerView }>(`/api/questions/${id}?persons=yes`);
    answers.push({ id, milliseconds: Math.round(performance.now() - began), view: { ...view, pictures: view.pictures.length } });
  }
  const made = `through archives, each ledger verified, in ${Math.round(seconds)} s`;
  await largeWritten(plan, observed, made, answers);
}

/** Both made-up companies, and what the questions say of them. @throws with the reason, when any part refuses. */
export async function runCompanies(plan: CompaniesPlan): Promise<void> {
  await mkdir(plan.folder, { recursive: true });
  await small(plan);
  await large(plan);
}
