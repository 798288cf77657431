import { DatabaseSync } from "node:sqlite";
import type { Question } from "#core/quality/index.ts";
import { questions, usualAsking } from "#core/quality/index.ts";
import { d1Over } from "./d1-over-sqlite.ts";

/**
 * A program of its own, so that its heap can be bounded: answers the owner's questions one after another, as the report does, from a
 * database file by the edge's own code, and prints a line of each. `node heap-of-questions.ts FILE COMPANY DAY`.
 */
const [file = "", company = "", day = ""] = process.argv.slice(2);

// By variables' names: the edge is written for another platform's types than the tests.
const edge = "#functions/edge";
const load = async <T>(path: string): Promise<T> => (await import(`${edge}/${path}`)) as T;
type Page = (...asked: readonly unknown[]) => Promise<unknown>;
interface Answered {
  readonly jobs: number;
  readonly view: object;
}

const { answerTo } = await load<{ answerTo: (...given: readonly unknown[]) => Promise<Answered> }>("questions/answer.ts");
const { begun } = await load<{ begun: (services: unknown, company: string, question: Question) => Promise<unknown> }>("questions/begun.ts");
const { observedIn } = await load<{ observedIn: (database: unknown, parts: readonly string[]) => { readonly page: Page } }>(
  "adapters/observed.ts",
);
const { knownIn } = await load<{ knownIn: (database: unknown) => Page }>("adapters/company-known.ts");

const database = d1Over(new DatabaseSync(file, { readOnly: true }));
let most = 0;
const looked = (): void => {
  most = Math.max(most, process.memoryUsage().heapUsed);
};
const observed = observedIn(database, []);
const services = {
  clock: () => Date.parse(`${day}T12:00:00Z`),
  known: knownIn(database),
  observed: {
    page: async (...asked: readonly unknown[]) => {
      const rows = await observed.page(...asked);
      looked();
      return rows;
    },
  },
};
const session = { company, language: "en", units: "inch" };

const views: object[] = [];
for (const question of questions) {
  most = 0;
  const start = await begun(services, company, question);
  const { view, jobs } = await answerTo(services, session, question, { ...usualAsking(day), persons: true }, start);
  views.push(view);
  looked();
  console.log(JSON.stringify({ id: question.id, jobs, characters: JSON.stringify(view).length, most }));
}
