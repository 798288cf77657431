import { describe, expect, it } from "vitest";
import { momentAt, momentOf, type PhotoNote, type Taken, whyNoPosition, whyNoTime } from "#core/photo/index.ts";

const HOUR_MS = 3_600_000;
const WALL: Taken = { text: "2025-11-02T01:30:00", source: "original" };
// 2025-11-02 01:30 UTC: 20 394 days after 1970 and an hour and a half.
const AS_UTC = 20_394 * 86_400_000 + 1.5 * HOUR_MS;

describe("when a picture was taken", () => {
  it("is one second wide where the offset is settled, and says by what", () => {
    expect(momentOf({ ...WALL, offset: "-06:00", offsetFrom: "tag" })).toEqual({
      earliest: AS_UTC + 6 * HOUR_MS,
      latest: AS_UTC + 6 * HOUR_MS + 999,
      settledBy: "tag",
    });
    expect(momentOf({ ...WALL, offset: "+05:45", offsetFrom: "satellite" })).toEqual({
      earliest: AS_UTC - 5.75 * HOUR_MS,
      latest: AS_UTC - 5.75 * HOUR_MS + 999,
      settledBy: "satellite",
    });
  });
  it("E01 spans every zone of the world where none is known", () => {
    expect(momentOf(WALL)).toEqual({ earliest: AS_UTC - 14 * HOUR_MS, latest: AS_UTC + 12 * HOUR_MS + 999, settledBy: "nothing" });
  });
  it("T01 spans both passes of the hour that happens twice at the site", () => {
    expect(momentAt(WALL, [-360, -420])).toEqual({ earliest: AS_UTC + 6 * HOUR_MS, latest: AS_UTC + 7 * HOUR_MS + 999, settledBy: "site" });
    expect(momentAt(WALL, [])).toEqual(momentOf(WALL));
  });
  it("lets the camera's own offset come before the site's", () => {
    const own: Taken = { ...WALL, offset: "+00:00", offsetFrom: "tag" };
    expect(momentAt(own, [-360])).toEqual({ earliest: AS_UTC, latest: AS_UTC + 999, settledBy: "tag" });
  });
});

describe("why the camera gives none", () => {
  const facts = (...notes: PhotoNote[]) => ({ taken: null, position: null, notes });
  it.each([
    [["metadata-missing"], "metadata-missing", "metadata-missing"],
    [["time-zeros", "position-withheld"], "time-zeros", "position-withheld"],
    [["metadata-cut-off", "time-missing", "position-missing"], "metadata-cut-off", "metadata-cut-off"],
    [["metadata-broken", "time-impossible", "position-broken"], "time-impossible", "position-broken"],
    [["time-missing", "position-missing"], "time-missing", "position-missing"],
    [[], "time-missing", "position-missing"],
  ] as const)("%j: %s, %s", (notes, time, position) => {
    expect([whyNoTime(facts(...notes)), whyNoPosition(facts(...notes))]).toEqual([time, position]);
  });
  it("is nothing where it gives one", () => {
    const both = { taken: WALL, position: { latitude: 0, longitude: 0 }, notes: ["time-zeros", "metadata-broken"] as const };
    expect([whyNoTime(both), whyNoPosition(both)]).toEqual([undefined, undefined]);
  });
});
