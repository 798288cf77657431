import { describe, expect, test } from "vitest";
import { coveringsBefore, type Filled, openingTyped, plannedTyped, stepsBefore } from "#core/screens/office/opening-typed.ts";
import { opening, plannedDesign, read } from "#core/wire/index.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";

const content = defaultSheet();
const asked = { id: "a1", sheet: { digest: "d".repeat(64), content }, units: "inch", zone: "America/Chicago" } as const;
const filled = (texts: Readonly<Record<string, string>>, lists: Readonly<Record<string, readonly string[]>> = {}): Filled => ({
  text: (name) => texts[name] ?? "",
  all: (name) => lists[name] ?? [],
});

describe("an opening as typed", () => {
  test("is what the edge takes: only what was filled in, the ticket's dates in the site's zone", () => {
    const typed = openingTyped(
      filled(
        {
          title: "Fall",
          "customer-name": "A",
          "customer-phone": "1",
          "onSite-phone": "2",
          address: "1 Way",
          tieMarks: "A, sill\n\n B, post \n",
          latitude: "41.0021",
          longitude: "-89.1204",
          how: "map",
          "figure-staticHead": "4 ft",
          "figure-pipeRun": "unknown",
          "reading-ticket-dig-from": "2026-05-11T17:00",
          "reading-ticket-good-until": "2026-12-01T00:00",
          language: "es",
        },
        { crew: ["p1"], kitCard: ["pump"], switch: ["check-valve"] },
      ),
      asked,
    );
    expect(typed).toEqual({
      ok: true,
      value: {
        id: "a1",
        title: "Fall",
        crew: ["p1"],
        customer: { name: "A", phone: "1" },
        site: { address: "1 Way", tieMarks: ["A, sill", "B, post"], place: { latitude: 410_021_000, longitude: -891_204_000, how: "map" } },
        language: "es",
        sheetVersion: asked.sheet.digest,
        kitCards: ["pump"],
        figures: { staticHead: { typed: "4 ft", unit: "ft" }, pipeRun: "unknown" },
        switches: { "check-valve": true },
        readings: [
          { item: "ticket-dig-from", typed: "2026-05-11T17:00-05:00", unit: "instant" },
          { item: "ticket-good-until", typed: "2026-12-01T00:00-06:00", unit: "instant" },
        ],
      },
    });
    expect(typed.ok && read(opening, typed.value, "request-shape").ok).toBe(true);
  });

  test("a known site goes by its id; a latitude that cannot be read is refused at its field", () => {
    expect(openingTyped(filled({ title: "T", site: "s1", address: "x" }), asked)).toMatchObject({ value: { site: { known: "s1" } } });
    expect(openingTyped(filled({ title: "T", address: "x", latitude: "north", longitude: "1" }), asked)).toMatchObject({
      ok: false,
      refusal: { place: "latitude" },
    });
  });

  test("opened late: the steps on site before the first one, and the coverings whose holds all lie in them", () => {
    const steps = stepsBefore(content, "pipe-glued");
    expect(steps).toEqual(["arrive-on-site", "hole-and-bed", "basin-set", "side-wall-fitting", "wet-check", "basin-backfill"]);
    expect(coveringsBefore(content, steps)).toEqual(["backfill-basin"]);
    expect(coveringsBefore(content, [])).toEqual([]);
    const typed = openingTyped(
      filled({ title: "T", lateReason: "r", begins: "pipe-glued" }, { late: ["late"], coveredBefore: ["backfill-basin"] }),
      asked,
    );
    expect(typed).toMatchObject({ value: { late: { reason: "r", steps: [...steps], coverings: ["backfill-basin"] } } });
  });

  test("what the design check is asked has every switch, said or standard", () => {
    const planned = plannedTyped(filled({ "figure-staticHead": "4" }, { switch: ["round-basin"] }), content, []);
    expect(planned.switches).toMatchObject({ "round-basin": true, "check-valve": false });
    expect(Object.keys(planned.switches ?? {})).toHaveLength(content.switches.length);
    expect(read(plannedDesign, planned, "request-shape").ok).toBe(true);
  });
});
