import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { answerView, type Observed, qualitySpeaking, questions, usualAsking } from "#core/quality/index.ts";
import { archiveDrawn } from "./archive.ts";
import { companyFrom, today } from "./draw.ts";
import { planted, plantedWords } from "./effects.ts";
import { factsOf } from "./facts.ts";
import { ledgerDrawn, versionsDrawn } from "./ledger.ts";
import { questionsSheet } from "./sheet.ts";

export interface CompaniesPlan {
  readonly edge: string;
  readonly operatorKey: string;
  readonly log: (line: string) => void;
  readonly folder: string;
}

const SMALL = { seed: 60, jobs: 60 } as const;
const LARGE = { seed: 10_000, jobs: 10_000 } as const;
const COMPANY = "sixty-jobs";
const DAY_MS = 86_400_000;

const json = (value: unknown): string => `${JSON.stringify(value, undefined, 2)}\n`;

/** The small company by its ledgers: founded, every job's archive read, then asked through the public API. */
async function small({ edge, operatorKey, log, folder }: CompaniesPlan): Promise<void> {
  // loaded only now: who draws a company has no use for the demo's pictures
  const { Client } = await import("../demo/index.ts");
  const drawing = { ...SMALL, effects: planted(SMALL.jobs), ends: Math.floor(Date.now() / DAY_MS) * DAY_MS };
  const observed = companyFrom(drawing);
  const founding = {
    id: COMPANY,
    name: "Sixty Jobs (made up)",
    zone: "UTC",
    units: "inch",
    language: "en",
    owner: { name: "Company owner" },
  };
  const { ownerLink } = await new Client(edge).send<{ ownerLink: string }>("POST", "/api/companies", founding, {
    authorization: `Operator ${operatorKey}`,
  });
  const owner = await new Client(edge).signIn(ownerLink);
  await owner.send("POST", "/api/company/sheets", questionsSheet());
  const versions = await versionsDrawn();
  let entries = 0;
  for (const job of observed.jobs) {
    const ledger = await ledgerDrawn(job, versions, COMPANY);
    entries += ledger.entries.length;
    await owner.postFile("/api/archives", archiveDrawn(ledger, job, versions, COMPANY), "application/zip");
  }
  log(`${SMALL.jobs} jobs came in as archives: ${entries} entries, their chains verified; photos as facts, without bytes`);
  for (const fact of factsOf(observed.company, COMPANY)) await owner.send("POST", "/api/company/facts", fact);
  // rows that are behind are made some at a time: asked until none is
  for (let behind = 1; behind > 0; ) ({ behind } = await owner.get<{ behind: number }>("/api/questions/cost"));
  const answers: unknown[] = [];
  for (const { id } of questions) answers.push(await owner.get(`/api/questions/${id}?persons=yes`));
  await writeFile(join(folder, "small.json"), json({ jobs: SMALL.jobs, planted: plantedWords(drawing.effects), answers }));
  await writeFile(join(folder, "small-report.pdf"), await owner.bytes("/api/report"));
  log(`${SMALL.jobs} jobs: small.json and small-report.pdf`);
}

const named = ({ jobs }: Observed): Readonly<Record<string, string>> => Object.fromEntries(jobs.map(({ job, title }) => [job, title]));

/** The large company by its rows: 10,000 ledgers would take most of an hour to verify. */
async function large({ log, folder }: CompaniesPlan): Promise<void> {
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
  const count = (of: (job: Observed["jobs"][number]) => number): number => observed.jobs.reduce((sum, job) => sum + of(job), 0);
  const [readings, pictures] = [count((job) => job.readings.length), count((job) => job.pictures.length)];
  const made = "filled as rows, not through archives";
  await writeFile(
    join(folder, "large.json"),
    json({ jobs: LARGE.jobs, readings, pictures, made, planted: plantedWords(effects), answers }),
  );
  log(`${LARGE.jobs} jobs (${readings} readings, ${pictures} photo facts; ${made}): large.json`);
  for (const { id, milliseconds, view } of answers)
    log(`  ${id} in ${milliseconds} ms: ${[view.tooFew, ...view.signals].filter(Boolean).join(" | ") || "nothing stands out"}`);
}

/** Both made-up companies, and what the questions say of them. @throws with the reason, when any part refuses. */
export async function runCompanies(plan: CompaniesPlan): Promise<void> {
  await mkdir(plan.folder, { recursive: true });
  await small(plan);
  await large(plan);
}
