import { chain, type Envelope, genesis, type Head, headAfter, type Json, type SealedEntry } from "#core/ledger/index.ts";
import { digest } from "../node-digest.ts";
import { type Asked, type Benched, type Company, newId, withStack } from "./edge-for-bench.ts";
import { entered, type Job, jobIn } from "./entering.ts";
import { beside, type Line } from "./line.ts";
import { median, medians } from "./medians.ts";

const BATCH = 20;
const ROUNDS = 15;
const WARM = 5;
/** Entries that lie in the large company, and of each of its jobs. */
const LARGE = 100_000;
const EACH = 20;
/** Until findings are up to date again. */
const FINDINGS_MS = 1_000;

/** As a phone sends them: readings, answers and notes of a step. */
const twenty = (job: Job): Promise<SealedEntry[]> =>
  Promise.all(
    Array.from({ length: BATCH }, (_, i) => {
      if (i % 3 === 0) return entered(job, "reading-taken", { item: "gap-along", typed: "1/16", unit: "in" });
      if (i % 3 === 1) return entered(job, "answered", { item: "bed-compacted", choice: "all-done" });
      return entered(job, "note-for-record", { text: "ground frozen four inches down" });
    }),
  );

const INSERT = `INSERT INTO entry (company, job, number, id, kind, digest, hash, envelope, body)
  SELECT ?1, ?2, value->>'number', value->>'id', value->>'kind', value->>'digest', value->>'hash', value->>'envelope', value->>'body'
  FROM json_each(?3)`;

/** The same rows, made beforehand and chained: what is left is to write them. */
async function rowsAfter(head: Head, entries: readonly SealedEntry[]): Promise<{ readonly rows: Json; readonly head: Head }> {
  const rows: Json[] = [];
  let last = head;
  for (const entry of entries) {
    const envelope: Envelope = chain(last, entry.sealed, Date.UTC(2026, 4, 4, 18), Date.UTC(2026, 4, 4, 18));
    const next = await headAfter(digest, envelope);
    if (!next.ok) throw new Error(`the bench's entry was not chained: ${next.refusal.code}`);
    last = next.value;
    const { id, kind } = entry.sealed;
    const [text, body] = [JSON.stringify(envelope), JSON.stringify(entry.body)];
    rows.push({ number: last.number, id, kind, digest: entry.digest, hash: last.hash, envelope: text, body });
  }
  return { rows, head: last };
}

async function send({ company, job }: Job, entries: readonly SealedEntry[]): Promise<void> {
  const { answers } = await company.crew.send<{ answers: readonly { outcome?: string }[] }>("POST", `/api/jobs/${job}/entries`, {
    sent: Date.now(),
    entries,
  });
  if (answers.some(({ outcome }) => outcome !== "taken")) throw new Error(`the bench's entries were not taken: ${JSON.stringify(answers)}`);
}

const BEHIND = `SELECT (SELECT max(number) FROM entry WHERE company = ?1 AND job = ?2) AS head,
  (SELECT number FROM finding WHERE company = ?1 AND job = ?2) AS judged`;

/** Until the findings that are kept of a job are those of its last entry. */
async function upToDate({ bare }: Benched, { company, job }: Job): Promise<void> {
  for (;;) {
    const [rows] = await bare([[BEHIND, company.id, job]]);
    if (rows?.[0]?.head === rows?.[0]?.judged) return;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}

const HISTORY = `WITH RECURSIVE counted (n) AS (SELECT ?2 UNION ALL SELECT n + 1 FROM counted WHERE n + 1 < ?3),
  each (k) AS (SELECT 1 UNION ALL SELECT k + 1 FROM each WHERE k < ${EACH})
  INSERT INTO entry (company, job, number, id, kind, digest, hash, envelope, body)
  SELECT ?1, printf('old-%06d', n), k, printf('%032x', n * 1000 + k), 'note-for-record', printf('%064x', n * 1000 + k),
    printf('%064x', n * 1000 + k), printf('%0600d', k), printf('%0300d', k) FROM counted, each`;
const JOBS = `WITH RECURSIVE counted (n) AS (SELECT ?2 UNION ALL SELECT n + 1 FROM counted WHERE n + 1 < ?3)
  INSERT INTO job (company, id, opened) SELECT ?1, printf('old-%06d', n), n FROM counted`;

/** Entries that lie in a company's other jobs, of the size of real ones. */
async function history({ bare }: Benched, { id }: Company, entries: number): Promise<void> {
  const most = entries / EACH;
  for (let from = 0; from < most; from += 500) {
    const until = Math.min(most, from + 500);
    await bare([JOBS, HISTORY].map((sql): Asked => [sql, id, from, until]));
  }
}

/** An append beside the bare batch of the same rows, in a small company and in a large one, and until findings follow. */
export const append = (): Promise<readonly Line[]> =>
  withStack(async (benched) => {
    const [small, large] = [await benched.company(), await benched.company()];
    await history(benched, large, LARGE);
    const [one, other] = [await jobIn(small), await jobIn(large)];
    const bareJob: Job = { company: small, job: newId(), phone: newId(), run: 0 };
    let head: Head = genesis;
    const prepared = new Map<Job, SealedEntry[]>();
    let rows: Json = [];
    const prepareBare = async (): Promise<void> => {
      ({ rows, head } = await rowsAfter(head, await twenty(bareJob)));
    };
    const follows: number[] = [];
    const settle = async (job: Job): Promise<void> => {
      const began = performance.now();
      await upToDate(benched, job);
      follows.push(performance.now() - began);
      prepared.set(job, await twenty(job));
    };
    for (const job of [one, other]) prepared.set(job, await twenty(job));
    await prepareBare();
    const appended = (job: Job) => ({ run: () => send(job, prepared.get(job) ?? []), settle: () => settle(job) });
    const took = await medians(
      [
        { name: "small", ...appended(one) },
        {
          name: "bare",
          run: () => benched.bare([[INSERT, small.id, bareJob.job, JSON.stringify(rows)]]),
          settle: prepareBare,
        },
        { name: "large", ...appended(other) },
      ],
      ROUNDS,
      WARM,
    );
    return [
      beside(`${BATCH} entries appended, beside the bare batch`, took.small, took.bare, 1.25),
      beside(`the same in a company of ${LARGE} entries, beside one of few`, took.large, took.small, 1.1),
      { what: "until findings are up to date again", unit: "ms", ours: median(follows), beside: FINDINGS_MS, atMost: 1 },
    ];
  });
