import { describe, expect, test } from "vitest";
import { awayFromSite, jobState } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { distanceText, whereOf } from "#core/screens/field/picture/where.ts";
import { bench, book } from "../../helpers/job.ts";

const taken = 1_780_315_200_000;

describe("a browser's position beside a picture", () => {
  test("integers of 1e-7 degree, millimetres, and how far in time it lies from the picture", () => {
    const position = { coords: { latitude: 40.123456789, longitude: -75.00000004, accuracy: 7.8126 }, timestamp: taken - 4000 };
    expect(whereOf(position, taken)).toEqual({ latitude: 401_234_568, longitude: -750_000_000, accuracy: 7813, age: 4000 });
    // a fix that came after the picture is as far from it
    expect(whereOf({ ...position, timestamp: taken + 2500 }, taken)).toMatchObject({ age: 2500 });
  });

  test("just west of the meridian is a plain 0, which has one way to be written", () => {
    const where = whereOf({ coords: { latitude: -1e-9, longitude: -1e-9, accuracy: 1 }, timestamp: taken }, taken) as { longitude: number };
    expect(Object.is(where.longitude, 0)).toBe(true);
  });

  test("no position, and one that is no place on the earth, go along with nothing", () => {
    expect(whereOf(undefined, taken)).toBeUndefined();
    for (const latitude of [Number.NaN, 91])
      expect(whereOf({ coords: { latitude, longitude: 0, accuracy: 1 }, timestamp: taken }, taken)).toBeUndefined();
    expect(
      whereOf({ coords: { latitude: 1, longitude: 1, accuracy: Number.POSITIVE_INFINITY }, timestamp: taken }, taken),
    ).not.toHaveProperty("accuracy");
  });
});

describe("a distance in words", () => {
  test.each([
    // 3.4547 miles
    [5_559_754_000, "inch", "en", "3.5 miles"],
    [1_609_344_000, "inch", "en", "1 mile"],
    // 18.6 miles
    [30_000_000_000, "inch", "en", "19 miles"],
    // 246 feet, said to ten
    [75_000_000, "inch", "en", "250 feet"],
    [3_048_000, "inch", "en", "10 feet"],
    [5_559_754_000, "metric", "en", "5.6 kilometers"],
    [75_000_000, "metric", "es", "80 metros"],
    [5_559_754_000, "inch", "es", "3.5 millas"],
  ] as const)("%d µm, %s, %s: %s", (micrometres, units, language, text) => {
    // Spanish of Spain writes a comma, that of Mexico a point: either reads right
    expect(distanceText(micrometres, units, language).replace(",", ".")).toBe(text);
  });
});

describe("how far a phone is from the site", () => {
  // a site at 40° north, its place said to 10 m
  const ledger = (where: Json | undefined) => {
    const b = book(bench());
    const id = b.enter("site-located", { how: "from a map" });
    const { entries, versions } = b.ledger();
    return { versions, entries: entries.map((entry) => (entry.id === id && where !== undefined ? { ...entry, where } : entry)) };
  };
  const site = { latitude: 400_000_000, longitude: -750_000_000, accuracy: 10_000 };
  const phone = { latitude: 400_500_000, longitude: -750_000_000, accuracy: 8_000 };

  test("a twentieth of a degree north: 5559.75 m by the earth's mean radius, with the doubts of both places and of the sphere", () => {
    // 2π · 6 371 008.8 m / 360 / 20 = 5559.754 m; √(10² + 8² + (0.006 · 5559.754)²) = √(100 + 64 + 1112.79) = 35.73 m
    const away = awayFromSite(jobState(ledger(site)), phone);
    expect((away?.distance ?? 0) / 1e6).toBeCloseTo(5559.754, 2);
    expect((away?.doubt ?? 0) / 1e6).toBeCloseTo(35.73, 1);
    // where nobody said how far the site goes
    expect(away?.reaches).toBe(75_000_000);
  });

  test("without a place of the site, or of the phone, there is no distance", () => {
    expect(awayFromSite(jobState(ledger(undefined)), phone)).toBeUndefined();
    expect(awayFromSite(jobState(ledger(site)), undefined)).toBeUndefined();
  });
});
