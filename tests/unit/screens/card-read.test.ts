import { describe, expect, test } from "vitest";
import { cardText } from "#core/job/index.ts";
import { readCards } from "#core/screens/field/cards/read-cards.ts";
import type { CardsSeen } from "#core/screens/field/cards/seen.ts";
import type { Keep } from "#core/screens/field/keep/index.ts";
import { digest } from "#infra/node-digest.ts";

const steps = [{ id: "hole" }, { id: "trench" }];
let judged: string[] = [];
/** A phone with two jobs, which notes whose steps it worked out. */
const keep = {
  state: {
    books: ["front", "back"].map((job) => ({
      kept: { job },
      get state() {
        judged.push(job);
        return { sheet: { steps } };
      },
    })),
  },
} as unknown as Keep;

async function code(company: string, job: string, step?: string, place: 0 | 1 = 0): Promise<string> {
  const text = await cardText(digest, { company, job, ...(step === undefined ? {} : { step }) }, { paper: "a4", place });
  if (!text.ok) throw new Error(text.refusal.code);
  return text.value;
}
const corner = { x: 1, y: 1, u: 0.1 };
const seen = (...texts: readonly string[]): CardsSeen => ({
  is: "looked",
  width: 100,
  height: 100,
  codes: texts.map((text) => ({ text, corners: [corner, corner, corner, corner] })),
});
const read = (...texts: readonly string[]) => readCards(keep, "falls", seen(...texts));

describe("cards against the jobs of this phone", () => {
  test("four codes of one card say its job and step; only that job's steps are worked out", async () => {
    judged = [];
    expect(await read(await code("falls", "back", "trench", 0), await code("falls", "back", "trench", 1))).toEqual([
      { is: "card", job: "back", step: "trench" },
    ]);
    expect(new Set(judged)).toEqual(new Set(["back"]));
  });

  test("a card for any step, one of a job that is not here, another company's and an altered one", async () => {
    expect(await read(await code("falls", "front"))).toEqual([{ is: "card", job: "front" }]);
    expect(await read(await code("falls", "roof", "hole"))).toEqual([{ is: "job not here" }]);
    expect(await read(await code("others", "front", "hole"))).toEqual([{ is: "nothing" }]);
    const real = await code("falls", "front", "hole");
    const altered = `${real.slice(0, -1)}${real.endsWith("0") ? "1" : "0"}`;
    expect(await read(altered)).toEqual([{ is: "nothing" }]);
  });

  test("where nobody could look, no card is said", async () => {
    expect(await readCards(keep, "falls", { is: "not looked" })).toEqual([]);
  });
});
