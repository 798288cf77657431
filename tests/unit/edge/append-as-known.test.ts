import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { type EdgeInNode, edgeInNode, type Worker } from "#infra/simulate/edge-in-node.ts";
import { batchOf, type Client, type Company, newCompany, newJob, type Phone, type Reply } from "../../helpers/edge.ts";
import { verifyLedger } from "../../helpers/verifier.ts";

// An append that goes by what this isolate holds of the job and knows of the session, and asks the database once. It must end as if
// everything had been asked for: what is not so any more is found by the batch that writes.

let edge: EdgeInNode;
let company: Company;
let job: string;
let phone: Phone;

beforeAll(async () => {
  const source = fileURLToPath(new URL("../../../functions/edge/worker.ts", import.meta.url));
  edge = await edgeInNode(((await import(source)) as { default: Worker }).default);
});
afterAll(() => edge.stop());

const note = (about: { made?: number; id?: string } = {}, text = "ground frozen four inches down", person = company.people.crew) =>
  phone.entry(job, person, "note-for-record", { text }, about);
const append = (client: Client, ...entries: unknown[]): Promise<Reply> => client.post(`/api/jobs/${job}/entries`, batchOf(...entries));
/** What the last request asked of the company's database up to its writing, as whether it wrote; findings follow after that. */
const asked = (): readonly boolean[] => {
  const calls = (edge.works.at(-1)?.calls ?? []).filter(({ database }) => database === "home").map(({ writes }) => writes);
  return calls.slice(0, calls.indexOf(true) + 1);
};
const numbers = ({ body }: Reply): readonly number[] => body.answers.map(({ number }: { number: number }) => number);
async function ledger() {
  const { body, bytes } = await company.owner.get(`/api/jobs/${job}/ledger`);
  expect(verifyLedger(new TextDecoder().decode(bytes))).toMatchObject({ ok: true, faults: [] });
  return body.head.number as number;
}

beforeEach(async () => {
  company = await newCompany(edge.address, edge.operatorKey);
  ({ job, phone } = await newJob(company));
  // by this the session is known and, once its findings have followed, the job is held
  expect(numbers(await append(company.crew, await note()))).toEqual([3]);
});

it("asks once where session and job are known, and three times where they are not", async () => {
  expect(asked()).toEqual([false, false, true]);
  expect(numbers(await append(company.crew, await note(), await note()))).toEqual([4, 5]);
  expect(asked()).toEqual([true]);
  expect(await ledger()).toBe(5);
});

it("a session is asked for again after a minute", async () => {
  edge.now += 61_000;
  expect(numbers(await append(company.crew, await note()))).toEqual([4]);
  expect(asked()).toEqual([false, false, true]);
});

describe("what is not so any more", () => {
  const nothingMore = async (reply: Reply, code: string) => {
    expect(reply).toMatchObject({ status: 401, body: { code } });
    expect(await ledger()).toBe(3);
  };

  it("a session that was withdrawn", async () => {
    expect(await company.owner.ask("DELETE", `/api/people/${company.people.crew}/sessions`)).toMatchObject({ status: 204 });
    await nothingMore(await append(company.crew, await note()), "session-ended");
  });

  it("a session that lies unused for too long, or is over", async () => {
    for (const change of ["last = 0, idle = 1", "ends = 1"]) {
      edge.home.sqlite.exec(`UPDATE session SET ${change} WHERE person = '${company.people.crew}'`);
      await nothingMore(await append(company.crew, await note()), "session-ended");
    }
  });

  it("a token that was replaced, after its grace", async () => {
    edge.home.sqlite.exec("UPDATE session_token SET ends = 1");
    const reply = await append(company.crew, await note());
    edge.home.sqlite.exec("UPDATE session_token SET ends = NULL");
    await nothingMore(reply, "session-ended");
  });

  it("a person who has left", async () => {
    edge.home.sqlite.prepare("UPDATE person SET left_at = 1 WHERE id = ?").run(company.people.crew);
    await nothingMore(await append(company.crew, await note()), "session-ended");
  });

  it("a session of nobody", async () => {
    edge.home.sqlite.exec(`DELETE FROM session_token WHERE session IN (SELECT hash FROM session WHERE person = '${company.people.crew}')`);
    await nothingMore(await append(company.crew, await note()), "session-missing");
  });

  it("an author who has left meanwhile, whose phone another carries", async () => {
    const { person } = (await company.owner.post("/api/people", { name: "Lee Marsh", role: "crew" })).body;
    edge.now += 61_000;
    expect(numbers(await append(company.crew, await note({}, "by another", person)))).toEqual([4]);
    edge.home.sqlite.prepare("UPDATE person SET left_at = ? WHERE id = ?").run(edge.now, person);
    const made = edge.now + 1;
    const { answers } = (await append(company.crew, await note({ made }, "after", person))).body;
    expect(answers[0].refusal).toMatchObject({ code: "entry-author" });
    const before = await append(company.crew, await note({ made: edge.now - 1 }, "before", person));
    expect(numbers(before)).toEqual([5]);
    expect(await ledger()).toBe(5);
  });

  it("a head that another has moved: the entry comes after", async () => {
    // the second is planned on the head that the first moves, since findings, by which a job is held, follow an answer
    const both = await Promise.all([append(company.crew, await note()), append(company.crew, await note())]);
    expect(both.flatMap(numbers).toSorted()).toEqual([4, 5]);
    expect(await ledger()).toBe(5);
  });

  it("a ledger that was returned to an earlier point: the entry follows that, and no number is left out", async () => {
    expect(numbers(await append(company.crew, await note()))).toEqual([4]);
    edge.home.sqlite.exec(`DELETE FROM entry WHERE job = '${job}' AND number = 4`);
    expect(numbers(await append(company.crew, await note()))).toEqual([4]);
    expect(await ledger()).toBe(4);
  });

  it("a company that has been moved: its place is asked for anew in the same request", async () => {
    edge.home.sqlite.prepare("INSERT INTO closed (company, since, holder) VALUES (?, 0, '')").run(company.company);
    // here it lies where it lay, so it is still closed there
    expect(await append(company.crew, await note())).toMatchObject({ status: 503, body: { code: "company-moving" } });
    expect(edge.works.at(-1)?.calls.map(({ database }) => database)).toContain("directory");
    edge.home.sqlite.exec("DELETE FROM closed");
    expect(numbers(await append(company.crew, await note()))).toEqual([4]);
  });

  it.each([0, 61_000])("a session that was withdrawn while the body came, known %d ms ago", async (before) => {
    edge.now += before;
    const text = new TextEncoder().encode(JSON.stringify(batchOf(await note())));
    const half = text.length >> 1;
    const bytes = new ReadableStream<Uint8Array>({
      type: "bytes",
      async start(controller) {
        controller.enqueue(text.slice(0, half));
        await new Promise((resolve) => setTimeout(resolve, 200));
        edge.home.sqlite.exec(`UPDATE session SET ended = 1 WHERE person = '${company.people.crew}'`);
        edge.now += 6_000;
        controller.enqueue(text.slice(half));
        controller.close();
      },
    });
    const headers = { "content-type": "application/json" };
    await nothingMore(await company.crew.ask("POST", `/api/jobs/${job}/entries`, { bytes, headers }), "session-ended");
  });

  it("a job that is gone", async () => {
    edge.home.sqlite.exec(`DELETE FROM entry WHERE job = '${job}'; DELETE FROM job WHERE id = '${job}'`);
    expect(await append(company.crew, await note())).toMatchObject({ status: 404, body: { code: "job-unknown" } });
    expect(edge.home.sqlite.prepare("SELECT count(*) AS n FROM entry WHERE job = ?").get(job)).toMatchObject({ n: 0 });
  });
});

it("what was sent already is there already, and a bad one takes none with it", async () => {
  const first = await note();
  expect(numbers(await append(company.crew, first))).toEqual([4]);
  const again = await append(company.crew, first, await note());
  expect(again.body.answers).toMatchObject([
    { number: 4, outcome: "already there" },
    { number: 5, outcome: "taken" },
  ]);
  const { answers } = (await append(company.crew, await phone.entry(job, company.people.crew, "note-for-record", {}), await note())).body;
  expect(answers).toMatchObject([{ refusal: { code: "entry-shape" } }, { number: 6, outcome: "taken" }]);
  expect(await ledger()).toBe(6);
});

it("an entry under the company's own ledger is of no job", async () => {
  const own = `company-${company.company}`;
  const entry = await phone.entry(own, company.people.owner, "note-for-record", { text: "in" });
  const count = () => edge.home.sqlite.prepare("SELECT count(*) AS n FROM entry WHERE job = ?").get(own)?.n;
  const before = count();
  expect(before).toBeGreaterThan(0);
  expect(await company.owner.post(`/api/jobs/${own}/entries`, batchOf(entry))).toMatchObject({
    status: 404,
    body: { code: "job-unknown" },
  });
  expect(count()).toBe(before);
});
