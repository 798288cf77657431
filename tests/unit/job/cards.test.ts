import fc from "fast-check";
import encodeQR from "qr";
import { describe, expect, it } from "vitest";
import { type CardFor, cardLayout, cardSteps, cardText, readCard } from "#core/job/index.ts";
import { type CardPlace, cardSigns } from "#core/photo/index.ts";
import { digest } from "#infra/node-digest.ts";
import { defaultSheet } from "#infra/sheets/index.ts";

const upperLeft: CardPlace = { paper: "letter", place: 0 };
const card: CardFor = { company: "stillwater", job: "0f3a", step: "basin-set" };
const textOf = async (of: CardFor, place = upperLeft): Promise<string> => {
  const text = await cardText(digest, of, place);
  return text.ok ? text.value : text.refusal.code;
};
const read = (text: string, jobs = [{ job: "0f3a", steps: ["hole-and-bed", "basin-set"] }], company = "stillwater") =>
  readCard(digest, text, company, jobs);

describe("text of a card's code", () => {
  /*
   * By `printf '%s' TEXT | sha256sum`, the first bits in fives, each a sign of 0-9A-Z without I, L, O, U:
   * ["card","1","company","stillwater"]                     255ec239  00100 10101 01111              4NF
   * ["card","1","job","stillwater","0f3a"]                  c79b34a3  11000 11110 01101 10011 01001  RYDK9
   * ["card","1","step","stillwater","0f3a","basin-set"]     fc6a64e0  11111 10001 10101 00110        ZHN6
   * ["card","1","check","stillwater","0f3a","basin-set","A"] 01d10881  00000 00111 01000 10000        078G
   * ["card","1","check","stillwater","0f3a","A"]            29ae9b46  00101 00110 10111 01001        56Q9
   */
  it("is that worked out by hand", async () => {
    expect(await textOf(card)).toBe("AB1A4NFRYDK9ZHN6078G");
    expect(await textOf({ company: "stillwater", job: "0f3a" })).toBe("AB1A4NFRYDK9000056Q9");
  });

  it("fits into the smallest code, of 21 modules, with a medium check", async () => {
    for (const paper of ["letter", "a4"] as const)
      for (const place of [0, 1, 2, 3] as const) {
        const modules = encodeQR(await textOf(card, { paper, place }), "raw", { ecc: "medium", encoding: "alphanumeric", border: 1 });
        expect(modules.length - 2).toBe(21);
      }
  });

  it("is refused for an id that is no text", async () => {
    expect(await cardText(digest, { ...card, step: "\ud800" }, upperLeft)).toMatchObject({ ok: false });
  });
});

describe("readCard", () => {
  it("gives back job, step, paper and place of each code", async () => {
    for (const paper of ["letter", "a4"] as const)
      for (const place of [0, 1, 2, 3] as const)
        for (const one of [card, { company: card.company, job: card.job }]) {
          const { company: _, ...names } = one;
          expect(await read(await textOf(one, { paper, place }))).toEqual({ is: "card", ...names, paper, place });
        }
  });

  it("says why a text is no card that counts", async () => {
    const text = await textOf(card);
    expect(await read("https://example.com/")).toEqual({ is: "not a card" });
    expect(await read(`${text} `)).toEqual({ is: "not a card" });
    expect(await read(text.toLowerCase())).toEqual({ is: "not a card" });
    expect(await read(text.replace("AB1A", "AB1Z"))).toEqual({ is: "not a card" });
    expect(await read(text.replace("AB1", "AB2"))).toEqual({ is: "other version" });
    expect(await read(text, undefined, "kettle")).toEqual({ is: "another company" });
    expect(await read(text, [{ job: "77aa", steps: ["basin-set"] }])).toEqual({ is: "job unknown" });
    expect(await read(text, [{ job: "0f3a", steps: ["hole-and-bed"] }])).toEqual({ is: "step unknown" });
    // the upper left code's text made into the upper right one's: the check is of all that stands there
    expect(await read(text.replace("AB1A", "AB1B"))).toEqual({ is: "altered" });
    expect(await read(`${text.slice(0, 12)}0000${text.slice(16)}`)).toEqual({ is: "altered" });
  });

  it("finds a card among many jobs, and takes no text with one sign changed for any card", async () => {
    const jobs = Array.from({ length: 40 }, (_, n) => ({ job: `job-${n}`, steps: ["one", "two"] }));
    const [sign, at, job] = [fc.constantFrom(..."0123456789ABCDEFGHJKMNPQRSTVWXYZILOU $%*+-./:"), fc.nat(19), fc.nat(39)];
    await fc.assert(
      fc.asyncProperty(sign, at, job, async (changed, place, n) => {
        const of = { company: "stillwater", job: `job-${n}`, step: "two" };
        const text = await textOf(of);
        expect(await read(text, jobs)).toMatchObject({ is: "card", job: of.job, step: "two" });
        const other = text.slice(0, place) + changed + text.slice(place + 1);
        if (other !== text) expect((await read(other, jobs)).is).not.toBe("card");
      }),
      { numRuns: 300, seed: 20_261_129 },
    );
  });

  it("answers whatever text it is given", async () => {
    const texts = fc.oneof(
      fc.string({ maxLength: 40 }),
      fc
        .array(fc.constantFrom(..."AB10123456789CDEFGHJKMNPQRSTVWXYZ"), { minLength: 17, maxLength: 17 })
        .map((signs) => `AB1${signs.join("")}`),
    );
    const told = new Set<string>();
    await fc.assert(
      fc.asyncProperty(texts, async (text) => {
        const { is } = await read(text);
        told.add(is);
        expect(is).not.toBe("card");
        expect(["not a card", "other version"].includes(is)).toBe(typeof cardSigns(text) === "string");
      }),
      { numRuns: 400, seed: 20_261_129 },
    );
    expect([...told].sort()).toEqual(["another company", "not a card"]);
  });
});

describe("cardLayout", () => {
  it.each([
    ["letter", 215.9, 279.4],
    ["a4", 210, 297],
  ] as const)(
    "lays four codes of 50 mm out on %s, 12 mm from its edges, and a ruler of ten inches clear of them",
    (paper, width, height) => {
      const { codes, ruler, ...size } = cardLayout(paper);
      expect(size).toEqual({ width: width * 1000, height: height * 1000 });
      expect(codes.map(({ corners }) => corners[0])).toEqual([
        { x: 12_000, y: 12_000 },
        { x: width * 1000 - 62_000, y: 12_000 },
        { x: width * 1000 - 62_000, y: height * 1000 - 62_000 },
        { x: 12_000, y: height * 1000 - 62_000 },
      ]);
      for (const { corners } of codes) {
        const [{ x, y }] = corners;
        expect(corners.slice(1)).toEqual([
          { x: x + 50_000, y },
          { x: x + 50_000, y: y + 50_000 },
          { x, y: y + 50_000 },
        ]);
      }
      expect(ruler.length).toBe(254_000);
      expect(ruler.y).toBeGreaterThan(12_000);
      expect(ruler.y + ruler.length).toBeLessThan(height * 1000 - 12_000);
      // four modules of 50 mm / 21 stay empty around a code (ISO/IEC 18004, 5.3.8), and 4 mm more for the ruler's marks
      expect(ruler.x - 62_000).toBeGreaterThan(9_524 + 4_000);
    },
  );
});

it("gives a card to each step of the basin's tolerance sheet that asks for a picture", () => {
  const sheet = defaultSheet();
  expect(cardSteps(sheet).map(({ id }) => id)).toEqual([
    "arrive-on-site",
    "hole-and-bed",
    "basin-set",
    "side-wall-fitting",
    "wet-check",
    "basin-backfill",
    "pipe-glued",
    "trench-open",
    "liner-laid",
    "rock-and-foam",
    "fill-and-start",
    "pump-lid-wash",
    "walk-through",
    "leave-for-night",
  ]);
});
