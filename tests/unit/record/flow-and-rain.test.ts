import { describe, expect, it } from "vitest";
import type { Finding, ToleranceSheet } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { makeSayer } from "#core/record/say.ts";
import { sentences } from "#core/record/speaking.ts";
import { answerItem, bench, book, lengthItem, pictureItem } from "../../helpers/job.ts";
import { recordOf } from "../../helpers/record.ts";

const words = (en: string) => ({ en });
const own = { weight: "if you have it" } as const;
const sheet: ToleranceSheet = bench({
  items: [
    lengthItem("bin-volume", { ...own, quantity: "volume", unit: { inch: "gal", metric: "L" } }),
    lengthItem("bin-time", { ...own, quantity: "duration", unit: { inch: "s", metric: "s" } }),
    lengthItem("to-edge", own),
    answerItem("leaves-by", own),
    pictureItem("leaves-picture", own),
  ],
  checks: [
    {
      id: "flow-found",
      step: "step-one",
      title: words("Flow"),
      function: "flow as measured",
      items: ["bin-volume", "bin-time"],
      ways: [{ by: "bin", items: ["bin-volume", "bin-time"] }],
      kind: "flow",
      aim: { function: "expected flow" },
      ...own,
    },
    {
      id: "rain-room",
      step: "step-one",
      title: words("Room"),
      function: "room for rain",
      items: ["to-edge"],
      conditions: ["leaves-by", "leaves-picture"],
      kind: "length",
      lower: { function: "rain of a day" },
      ...own,
    },
  ],
});
const figure = (typed: string, unit: string) => ({ typed, unit });
const design = {
  // H = 20 ft - q/3 against 10 ft and next to no friction: 29.5 gpm, worked out in tests/unit/job/flow-as-measured.test.ts
  pumpCurve: figure("0 gpm 20 ft; 60 gpm 0 ft", ""),
  staticHead: figure("10", "ft"),
  pipeRun: figure("10", "ft"),
  pipeSize: figure("2", "in"),
  pipeCoefficient: figure("150", "1"),
  basinLength: figure("60.0", "in"),
  basinWidth: figure("48.0", "in"),
  basinDepth: figure("24.0", "in"),
  linedArea: figure("80.0", "ft²"),
  rainPerDay: figure("1.00", "in"),
};
function job(seconds: string, gallons = "20.0") {
  const b = book(sheet);
  b.enter("design-set", { figures: design as unknown as Json, switches: {} });
  b.read("bin-volume", gallons, { unit: "gal" });
  b.read("bin-time", seconds, { unit: "s" });
  b.read("to-edge", "8 0/16");
  b.answer("leaves-by", "is-dry");
  b.picture("leaves-picture");
  return b;
}
const sayer = (language: "en" | "es", units: "inch" | "metric" = "inch") => makeSayer({ language, units, zone: "America/New_York", sheet });
const said = (seconds: string, gallons?: string, language: "en" | "es" = "en", units: "inch" | "metric" = "inch"): string =>
  sayer(language, units).finding(job(seconds, gallons).finding("flow-found"));

describe("a measured flow in words", () => {
  it("as expected: both figures with their doubts", () => {
    // bin: 30 x 2/√3 x hypot(0.03, 0.0025, 0.00125, 0.0125, 0.0125) = 1.21 gpm; card: 2/√3 x hypot(5 % of 10.16 ft, 8 % of 29.5 gpm by
    // 1/3 ft a gpm, 1/2 ft of static head) = 1.226 ft over the slopes of pump and pipe, 0.343 ft a gpm: 3.57 gpm
    expect(said("40.0")).toBe(
      "Flow: measured 30 gpm ± 1.2 gpm; the design gives 30 gpm ± 3.6 gpm: as expected, within the doubt of the two.",
    );
  });

  it("less: by how much, and the causes with their sizes, likeliest first", () => {
    const text = said("60.0");
    expect(text).toContain("measured 20 gpm ± ");
    expect(text).toMatch(/: less by 9\.5 gpm, and the two are doubtful by \d(\.\d)? gpm only\./);
    const causes = [
      "a pump that gives 76 % of the head",
      "something in the line that takes",
      "a static head of 13 ft 3 in",
      "air, 32 %",
      "of C 20",
    ];
    const places = causes.map((cause) => text.indexOf(cause));
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(text).toContain("(3.3 times what is ordinary)");
    expect(text).toContain("To look by, no proof.");
  });

  it("more: what cannot explain it is named apart", () => {
    const text = said("37.5", "25.0");
    // at 40 gpm the pump gives 6.667 ft, of which 0.279 ft are friction: 6.388 ft, 3.612 less than 10
    expect(text).toContain("a static head of 6 ft 4 1/2 in, 3 ft 7 1/2 in less than designed");
    expect(text).toMatch(/No size of these would: .*(blockage|air)/);
  });

  it("a bin that was full too soon, with the one that would do", () => {
    expect(said("6", "5")).toBe("Flow: does not count, since the bin was full after 6 s; it must take 20 s. A bin of 16.7 gal would do.");
    expect(said("6", "5", "es", "metric")).toContain("Serviría un recipiente de 63");
  });

  it("in Spanish and metric, with no English left and no figure missing", () => {
    for (const seconds of ["40.0", "60.0", "30.0"]) {
      const text = said(seconds, undefined, "es", "metric");
      expect(text).toMatch(/L\/min/);
      expect(text).not.toMatch(/[{}]|\b(the|measured|gpm)\b/);
    }
  });
});

describe("room for rain in words", () => {
  it("says for how long it lasts at the design's rain", () => {
    const finding = job("40.0").finding("rain-room");
    expect(sayer("en").finding(finding)).toMatch(
      /^Room: room for 2 in ± .* of rain on the lined area; a day's rain by the design is 1 in: within\. At that rain, and nothing drying, it overflows after 48 h\.$/,
    );
    expect(sayer("es", "metric").finding(finding)).toMatch(/cabe 51 mm ± .* es 25 mm: dentro\. .* se desborda en 48 h\.$/);
  });
});

describe("every sentence that flow, evaporation and rain can ask for", () => {
  const keys = [
    ...["as-expected", "less", "more", "off-card", "bin-too-fast", "alone"].map((key) => `flow.${key}`),
    // the outcomes of an operating point that is none, as the pump's arithmetic names them
    ...["several crossings", "on a vertical piece", "curve below static head", "beyond the last point", "before the first point"].map(
      (kind) => `flow.${kind.replaceAll(" ", "-")}`,
    ),
    ...["within", "outside", "too-close"].map((key) => `rain.${key}`),
    ...["weather-odd", "no-evaporation", "site-unknown", "area-unknown", "longer", "no-longer"].map((key) => `leak.${key}`),
  ];
  it.each(["en", "es"] as const)("is there in %s", (language) => {
    const texts: Readonly<Record<string, string>> = sentences[language];
    expect(keys.filter((key) => texts[key] === undefined)).toEqual([]);
  });

  it("and prints with its figures instead of its key", () => {
    const bare = { step: "step-one", check: "flow-found", of: "check", verdict: "not taken", weight: "open", entries: [] } as const;
    const finding = (key: string): Finding => ({ ...bare, says: { key, figures: { measuredFlow: 113_562, doubtFlow: 5_000 } } });
    for (const key of keys.filter((each) => each.startsWith("flow."))) expect(sayer("en").finding(finding(key))).toMatch(/^Flow: /);
    expect(sayer("en").finding(finding("flow.alone"))).toContain("measured 30 gpm ± 1.3 gpm");
  });
});

describe("start-up in the record", () => {
  it("shows flow and rain with their readings, their limits and where most of their doubt comes from", () => {
    const { tried, compared } = recordOf(job("60.0").ledger());
    const [flow, rain] = tried;
    expect(flow).toMatchObject({ title: "Flow", readings: "bin-volume: 20.0 gal; bin-time: 60.0 s" });
    expect(flow?.value).toMatch(/^20 gpm ± /);
    expect(flow?.says).toMatch(/Most of the doubt: the pump's card, flow; .+; .+\.$/);
    expect(rain).toMatchObject({ title: "Room", limit: "at least 1 in" });
    expect(rain?.says).toMatch(/Most of the doubt: the limit, which comes from the design; .+; .+\.$/);
    expect(compared[0]).toMatchObject({ title: "Flow", measured: "20 gpm" });
    expect(compared[0]?.expected).toMatch(/^30 gpm ± /);
    expect(compared[0]?.difference).toMatch(/^9\.5 gpm less ± /);
  });
});
