import { describe, expect, it } from "vitest";
import { jobState, readCard } from "#core/job/index.ts";
import { cardsPageModel } from "#core/record/index.ts";
import { cardsEn } from "#core/record/words/cards-en.ts";
import { digest } from "#infra/node-digest.ts";
import { cardsPages } from "#templates/cards/index.ts";
import { cardsPage } from "../../helpers/cards-page.ts";
import { start } from "../../helpers/job.ts";

const jobs = [{ job: "job-one", steps: ["hole", "line", "basin"] }];
const read = (text: string) => readCard(digest, text, "kettle", jobs);

describe("the cards of a job", () => {
  it("are one for each step that asks for a picture, and one for any step", async () => {
    const { cards, title } = await cardsPage();
    expect(cards.map(({ step, title: of, mark }) => [step, of, mark])).toEqual([
      ["Step 2", "Hole and bed", "2"],
      ["Step 11", "Basin set", "11"],
      ["Any step", "", ""],
    ]);
    expect(title).toEqual({
      document: "Cards for pictures: Courtyard fall",
      job: "Courtyard fall",
      ownNumber: "26-118",
      at: start + 60_000,
    });
  });

  it.each(["letter", "a4"] as const)("say their job, step, paper and place, in each of their codes: %s", async (paper) => {
    const { cards } = await cardsPage({ paper });
    for (const [n, step] of ["hole", "basin", undefined].entries()) {
      const codes = cards[n]?.codes ?? [];
      expect(await Promise.all(codes.map(({ text }) => read(text)))).toEqual(
        [0, 1, 2, 3].map((place) => ({ is: "card", job: "job-one", ...(step === undefined ? {} : { step }), paper, place })),
      );
    }
  });

  it("have a ruler of ten inches with 51 marks of 5 mm and 81 of 1/8 in", async () => {
    const { ruler } = await cardsPage();
    expect([ruler.x, ruler.y, ruler.length]).toEqual([81, 12.7, 254]);
    const on = (side: "left" | "right") => ruler.marks.filter((mark) => mark.side === side);
    expect([on("left").length, on("right").length]).toEqual([51, 81]);
    expect(on("left").flatMap(({ at, label }) => (label === "" ? [] : [[at, label]]))).toEqual([
      [0, "0"],
      [50, "50"],
      [100, "100"],
      [150, "150"],
      [200, "200"],
      [250, "250"],
    ]);
    expect(on("right").flatMap(({ at, label }) => (label === "" ? [] : [[at, label]]))).toEqual(
      Array.from({ length: 11 }, (_, n) => [Math.round(n * 25_400) / 1000, `${n}`]),
    );
  });

  it("are in the job's language", async () => {
    const { cards, how, words } = await cardsPage({ language: "es", paper: "a4" });
    expect(cards.map(({ step, title }) => `${step} ${title}`.trim())).toEqual([
      "Paso 2 Hoyo y cama",
      "Paso 11 Depósito colocado",
      "Cualquier paso",
    ]);
    expect(words.kind).toBe("Tarjeta para fotos");
    expect(how).not.toContain(cardsEn["how.flat"]);
  });

  it("of a job without a tolerance sheet are the one for any step", async () => {
    const made = await cardsPageModel({
      company: "kettle",
      job: "job-two",
      state: jobState({ entries: [], versions: {} }),
      settings: {},
      digest,
    });
    expect(made.ok && made.value.cards.map(({ step }) => step)).toEqual(["Any step"]);
  });

  it("escape what somebody typed", async () => {
    const page = cardsPages(await cardsPage({ title: "<script>alert(1)</script>" }), {
      fonts: "",
      code: () => ({ path: "M0 0H1V1H0Z", modules: 21 }),
    });
    expect(page).not.toContain("<script");
    expect(page.match(/<section class="card">/g)).toHaveLength(3);
    expect(page.match(/viewBox="0 0 21 21"/g)).toHaveLength(12);
  });
});
