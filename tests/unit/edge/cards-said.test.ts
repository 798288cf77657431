import { expect, it } from "vitest";
import { cardText } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import type { CardCodeSeen } from "#core/photo/index.ts";
import { digest } from "#infra/node-digest.ts";
import type { Loose } from "../../helpers/edge.ts";

// By a variable name: the edge is written for another platform's types than the tests.
const cardsSaidFile = "#functions/edge/photos/cards-said.ts";
const { cardsSaid } = (await import(cardsSaidFile)) as {
  cardsSaid: (services: unknown, place: { company: string; job: string }, cards: readonly CardCodeSeen[]) => Promise<Json>;
};

const corners = [
  [0, 0],
  [9, 0],
  [9, 9],
  [0, 9],
] as const;
const seen = async (company: string, job: string, step?: string): Promise<CardCodeSeen> => {
  const text = await cardText(digest, { company, job, ...(step === undefined ? {} : { step }) }, { paper: "letter", place: 2 });
  return { text: text.ok ? text.value : "", corners };
};

/** A company of three jobs, whose states are held: nothing is asked of a database. */
function services() {
  const asked: string[] = [];
  const state = { sheet: { steps: [{ id: "basin-set" }, { id: "liner-laid" }] } };
  return {
    asked,
    digest,
    jobs: {
      jobs: async (company: string) => {
        asked.push(company);
        return ["one", "two", "three"];
      },
    },
    held: { get: () => ({ state, stored: [] }) },
    ledgers: { readSince: async () => [] },
  };
}
const place = { company: "kettle", job: "one" };
const said = async (...cards: CardCodeSeen[]): Promise<Loose[]> =>
  ((await cardsSaid(services(), place, cards)) as Loose[]).map(({ says }) => says);

it("names this job and its step, and keeps what media saw", async () => {
  const code = await seen("kettle", "one", "basin-set");
  expect(await cardsSaid(services(), place, [code])).toEqual([{ ...code, says: { of: "this job", step: "basin-set" } }]);
  expect(await said(await seen("kettle", "one"))).toEqual([{ of: "this job" }]);
});

it("names another job of the company by its id alone", async () => {
  expect(await said(await seen("kettle", "three", "liner-laid"), await seen("kettle", "two"))).toEqual([
    { of: "another job", job: "three", step: "liner-laid" },
    { of: "another job", job: "two" },
  ]);
});

it("says why a card tells nothing", async () => {
  const whole = await seen("kettle", "one", "basin-set");
  expect(
    await said(
      await seen("pond", "one", "basin-set"),
      await seen("kettle", "four"),
      await seen("kettle", "one", "no-such-step"),
      { ...whole, text: whole.text.replace("AB1C", "AB1D") },
      { ...whole, text: whole.text.replace("AB1", "AB7") },
    ),
  ).toEqual([
    { of: "nothing", why: "another company" },
    { of: "nothing", why: "job unknown" },
    { of: "nothing", why: "step unknown" },
    { of: "nothing", why: "altered" },
    { of: "nothing", why: "other version" },
  ]);
});

it("asks for the company's jobs only where a card is not this job's, and reads each text once", async () => {
  const own = services();
  const code = await seen("kettle", "one", "basin-set");
  await cardsSaid(own, place, [code, code, code, code]);
  expect(own.asked).toEqual([]);
  const other = services();
  const foreign = await seen("kettle", "two");
  await cardsSaid(other, place, [foreign, foreign]);
  expect(other.asked).toEqual(["kettle"]);
});
