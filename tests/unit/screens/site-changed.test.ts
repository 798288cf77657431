import { describe, expect, it } from "vitest";
import { placeShown, siteChanged } from "#core/screens/office/site-typed.ts";
import type { SiteView } from "#core/wire/index.ts";

const place = { latitude: 401_234_567, longitude: -751_234_567, accuracy: 4_321, reaches: 30_480_000, how: "map" };
const site: SiteView = {
  id: "s",
  number: 3,
  address: "4 Elm Street",
  heightMark: "nail in the sill",
  tieMarks: ["corner A"],
  place,
  jobs: ["j"],
};
const fields = (change: Record<string, string> = {}) => {
  const shown: Record<string, string> = {
    address: site.address,
    heightMark: "nail in the sill",
    tieMarks: "corner A",
    how: "map",
    ...placeShown(place, "ft"),
    ...change,
  };
  return (name: string): string => shown[name] ?? "";
};

describe("a site that is changed", () => {
  it("shows its place as it would be typed", () => {
    // 4321 mm are 14.18 ft of 304.8 mm each; 30.48 m are 100 ft
    expect(placeShown(place, "ft")).toEqual({ latitude: "40.123457", longitude: "-75.123457", accuracy: "14.18", reaches: "100" });
    expect(placeShown(place, "m")).toMatchObject({ accuracy: "4.32", reaches: "30.48" });
    expect(placeShown(undefined, "m")).toEqual({ latitude: "", longitude: "", accuracy: "", reaches: "" });
  });

  it("keeps a place that was left as it was shown, to the last digit", () => {
    const changed = siteChanged(site, fields({ tieMarks: " corner A \n\n drain cover " }), "ft");
    expect(changed).toEqual({
      ok: true,
      value: { id: "s", address: "4 Elm Street", heightMark: "nail in the sill", tieMarks: ["corner A", "drain cover"], place },
    });
  });

  it("takes a new place as typed, loses one that was emptied, and asks where it comes from", () => {
    const moved = siteChanged(site, fields({ latitude: "40.5" }), "ft");
    expect(moved.ok && moved.value.place).toMatchObject({ latitude: 405_000_000, longitude: -751_234_570, reaches: 30_480_000 });
    const none = { latitude: "", longitude: "", accuracy: "", reaches: "" };
    expect(siteChanged(site, fields(none), "ft")).toMatchObject({ ok: true, value: { address: "4 Elm Street" } });
    expect(JSON.stringify(siteChanged(site, fields(none), "ft"))).not.toContain("place");
    expect(siteChanged(site, fields({ how: "" }), "ft")).toMatchObject({ ok: false, refusal: { place: "how" } });
    expect(siteChanged(site, fields({ latitude: "91" }), "ft")).toMatchObject({ ok: false, refusal: { place: "latitude" } });
  });
});
