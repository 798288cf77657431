import { describe, expect, it } from "vitest";
import { jobState, pictureFacts } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { makePictureSayer } from "#core/record/index.ts";
import { bench, book, pictureItem } from "../../helpers/job.ts";

const photo = "a".repeat(64);
const sheet = bench({
  items: [pictureItem("trench-open")],
  steps: [
    { id: "step-one", number: 1, title: { en: "Trench", es: "Zanja" }, cautions: [] },
    { id: "step-two", number: 2, title: { en: "Backfill", es: "Relleno" }, cautions: [] },
  ],
});

const corners = [
  [0, 0],
  [9, 0],
  [9, 9],
  [0, 9],
];
const code = (says: Json): Json => ({ text: "AB1A4NFRYDK9ZHN6078G", corners, says }) as Json;

/** Lines about cards of a picture of `step-one` in whose photo these codes were read, in words. */
function told(cards: Json | undefined, language: "en" | "es" = "en"): readonly string[] {
  const b = book(sheet);
  const id = b.picture("trench-open", { photo });
  b.enter("picture-read", { photo, facts: { taken: null, position: null, notes: [], ...(cards === undefined ? {} : { cards }) } });
  const state = jobState(b.ledger());
  const picture = state.facts.find((fact) => fact.id === id);
  const sayer = makePictureSayer({ language, units: "inch", zone: "America/New_York", sheet });
  return (picture ? pictureFacts(state, picture) : [])
    .filter(({ says }) => says.key.startsWith("photo.card-"))
    .map((line) => `${sayer.speaks(line.speaks)}: ${sayer.line(line)}`);
}

describe("a card in a picture", () => {
  it("says nothing where there is none, or nobody has looked for one", () => {
    expect(told(undefined)).toEqual([]);
    expect(told([])).toEqual([]);
  });

  it("speaks for the picture where it names the same step, or the job alone; its four codes are one card", () => {
    const same = code({ of: "this job", step: "step-one" });
    expect(told([same, same, same, same])).toEqual(["speaks for it: A card in the picture names this job and this step."]);
    expect(told([code({ of: "this job" })])).toEqual(["speaks for it: A card in the picture names this job, for any step."]);
  });

  it("asks where it names another step, in both languages by the step's own title", () => {
    const other = [code({ of: "this job", step: "step-two" })];
    expect(told(other)).toEqual([
      "speaks against it: The card in the picture names another step of this job: Backfill. Does the picture belong there?",
    ]);
    expect(told(other, "es")).toEqual([
      "habla en contra: La tarjeta en la foto nombra otro paso de este trabajo: Relleno. ¿Pertenece la foto a ese paso?",
    ]);
  });

  it("asks where it names another job, and where several stand in the picture", () => {
    const another = (job: string) => code({ of: "another job", job, step: "step-one" });
    expect(told([another("77aa")])).toEqual([
      "speaks against it: The card in the picture names another job of the company. Does the picture belong there?",
    ]);
    expect(told([code({ of: "this job", step: "step-one" }), another("77aa"), another("88bb")])).toEqual([
      "tells neither way: Different cards stand in the picture: 3. Which of them is meant?",
    ]);
  });

  it("tells nothing where it is nobody's card, whatever is written of it", () => {
    const nothing = [
      "tells neither way: A card in the picture is none that this company printed for a job, or was altered: it tells nothing.",
    ];
    expect(told([code({ of: "nothing", why: "altered" }), code({ of: "nothing", why: "another company" })])).toEqual(nothing);
    for (const says of [null, 7, "this job", [], { of: 5 }] as Json[]) expect(told([code(says)])).toEqual(nothing);
    for (const cards of [null, 7, {}, "x"] as Json[]) expect(told(cards)).toEqual([]);
  });
});
