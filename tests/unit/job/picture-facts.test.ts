import { describe, expect, test } from "vitest";
import {
  type Entry,
  findings,
  type JobLedger,
  jobState,
  lookBehind,
  type PictureLine,
  pictureFacts,
  picturesToLookAt,
} from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { makePictureSayer, makeSayer } from "#core/record/index.ts";
import { type Book, bench, book, minute, pictureItem, start, type What } from "../../helpers/job.ts";

const hour = 60 * minute;
/** 1 June 2026, 12:00 UTC, is 8:00 in New York. */
const noon = start;

const trench = bench({
  items: [pictureItem("trench-open"), pictureItem("trench-again"), pictureItem("stone-over", { weight: "asked", needsHidden: "bury-it" })],
});

type Patch = Partial<Omit<Entry, "id">>;
/** The ledger with entries as other phones would have sent them. */
const patched = (b: Book, patches: Readonly<Record<string, Patch>> = {}): JobLedger => {
  const { entries, versions } = b.ledger();
  return { versions, entries: entries.map((entry) => ({ ...entry, ...patches[entry.id] })) };
};

/** What media read of a photo, and the place in its part of the entry. */
const mediaRead = (b: Book, photo: string, facts: What, position?: Json): Readonly<Record<string, Patch>> => {
  const id = b.enter("picture-read", { photo, facts: { taken: null, position: null, notes: [], ...facts } }, { phone: "edge" });
  return position === undefined ? {} : { [id]: { where: { position } } };
};

const lines = (ledger: JobLedger, id: string): readonly PictureLine[] => {
  const state = jobState(ledger);
  const picture = state.facts.find((fact) => fact.id === id);
  return picture ? pictureFacts(state, picture) : [];
};
const line = (ledger: JobLedger, id: string, key: string): PictureLine | undefined =>
  lines(ledger, id).find(({ says }) => says.key === `photo.${key}`);
const keys = (ledger: JobLedger, id: string): readonly string[] => lines(ledger, id).map(({ says }) => says.key.replace("photo.", ""));
const findingOf = (ledger: JobLedger, check: string) => findings(jobState(ledger)).find((finding) => finding.check === check);

const photo = "a".repeat(64);
const picture = (b: Book, at: number, more: What = {}, phone = "phone-one"): string =>
  b.picture("trench-open", { photo, taken: at, ...more }, { at, phone });

describe("a picture of the open trench and the filling of the trench", () => {
  test("taken before: the times and their doubts speak for it", () => {
    const b = book(trench);
    const id = picture(b, noon + hour);
    b.covered("bury-it", "clear", {}, { at: noon + 2 * hour });
    // a contact of the same moment: 500 ms, k = 2
    expect(line(patched(b), id, "before-covering")).toEqual({
      speaks: "for",
      says: {
        key: "photo.before-covering",
        figures: {
          takenInstant: noon + hour,
          takenDoubtDuration: 1000,
          coveredInstant: noon + 2 * hour,
          coveredDoubtDuration: 1000,
        },
      },
    });
    expect(findingOf(patched(b), "trench-open")).toMatchObject({ verdict: "within", says: { key: "picture.not-looked-at" } });
  });

  test("taken after: a finding with both times and both doubts, too close to call and not outside", () => {
    const b = book(trench);
    b.covered("bury-it", "clear", {}, { at: noon + hour });
    const id = picture(b, noon + 2 * hour);
    const finding = findingOf(patched(b), "trench-open");
    expect(finding).toMatchObject({
      verdict: "too close to call",
      holds: "bury-it",
      entries: [id],
      says: {
        key: "picture.after-covering",
        figures: { takenInstant: noon + 2 * hour, takenDoubtDuration: 1000, coveredInstant: noon + hour, coveredDoubtDuration: 1000 },
      },
    });
    const sayer = makeSayer({ language: "en", units: "inch", zone: "America/New_York", sheet: trench });
    expect(finding && sayer.finding(finding)).toBe(
      "trench-open: by its times this picture was taken at 1 June 2026, 10:00 EDT ± 1 s, after it was covered at 1 June 2026, 9:00 EDT ± 1 s: too close to call. A clock may be off, or the covering was said too early.",
    );
  });

  test("what a person saw does not mend its time; another picture from before stands for both", () => {
    const b = book(trench);
    const before = b.picture("trench-open", { photo: "b".repeat(64), taken: noon + 30 * minute }, { at: noon + 30 * minute });
    b.covered("bury-it", "clear", {}, { at: noon + hour });
    const after = picture(b, noon + 2 * hour);
    b.enter("picture-looked-at", { picture: after, says: "shows it" });
    expect(line(patched(b), after, "after-covering")?.speaks).toBe("against");
    expect(findingOf(patched(b), "trench-open")?.verdict).toBe("within");
    const alone = { ...patched(b), entries: patched(b).entries.filter(({ id }) => id !== before) };
    expect(findingOf(alone, "trench-open")?.says.key).toBe("picture.after-covering");
  });

  test("a covering that is only inferred accuses nobody, however late the picture", () => {
    const b = book(trench);
    b.picture("stone-over", { photo: "c".repeat(64) }, { at: noon + hour });
    const id = picture(b, noon + 30 * hour);
    expect(findingOf(patched(b), "trench-open")?.verdict).toBe("within");
    expect(line(patched(b), id, "covering-inferred")).toEqual({
      speaks: "neither",
      says: { key: "photo.covering-inferred", figures: { coveredInstant: noon + hour } },
    });
  });

  test("a covering said later is worth a quarter of an hour each way", () => {
    const said = (taken: number) => {
      const b = book(trench);
      const id = picture(b, taken);
      b.covered("bury-it", "clear", { at: noon + hour }, { at: noon + 5 * hour });
      return keys(patched(b), id);
    };
    expect(said(noon + hour + 14 * minute)).toContain("covering-undecided");
    expect(said(noon + hour + 16 * minute)).toContain("after-covering");
    expect(said(noon + hour - 16 * minute)).toContain("before-covering");
  });

  test("opened up again, the older covering says nothing of a picture taken since", () => {
    const b = book(trench);
    b.covered("bury-it", "clear", {}, { at: noon + hour });
    b.enter("opened-up-again", { covering: "bury-it", exposed: "all", reason: "a leak" }, { at: noon + 2 * hour });
    const id = picture(b, noon + 3 * hour);
    expect(keys(patched(b), id).filter((key) => /cover/.test(key))).toEqual([]);
    b.covered("bury-it", "clear", {}, { at: noon + 4 * hour });
    expect(keys(patched(b), id)).toContain("before-covering");
  });

  test("two phones, one of which never met the edge: their clocks are not put beside each other", () => {
    const b = book(trench);
    const covered = b.covered("bury-it", "clear", {}, { at: noon + hour, phone: "phone-two" });
    const id = picture(b, noon + 2 * hour);
    const ledger = patched(b);
    const entries = ledger.entries.map((entry) => {
      const { sent: _, received: __, ...own } = entry;
      return entry.id === covered ? own : entry;
    });
    expect(keys(ledger, id)).toContain("after-covering");
    expect(keys({ ...ledger, entries }, id)).toContain("covering-undecided");
  });

  test("received otherwise it counts as a picture and proves no order, neither way", () => {
    const b = book(trench);
    const what = { item: "trench-open", photo, bytes: 1, type: "image/jpeg", how: "text message" };
    b.covered("bury-it", "clear", {}, { at: noon + hour });
    const id = b.enter("received-otherwise", what, { at: noon + 3 * hour });
    const patches = mediaRead(b, photo, {
      taken: { text: "2026-06-01T08:30:00", offset: "-04:00", offsetFrom: "tag", source: "original" },
    });
    expect(findingOf(patched(b, patches), "trench-open")).toMatchObject({ verdict: "within", entries: [id] });
    expect(keys(patched(b, patches), id)).toContain("covering-received");
    expect(keys(patched(b, patches), id).filter((key) => /before-|after-/.test(key))).toEqual([]);
  });

  test("nor does one received otherwise make a covering happen", () => {
    const b = book(trench);
    const what = { item: "stone-over", photo, bytes: 1, type: "image/jpeg", how: "text message" };
    b.enter("received-otherwise", what, { at: noon + hour });
    expect(b.clearance("bury-it").covered).toBeUndefined();
    b.picture("stone-over", {}, { at: noon + 2 * hour });
    expect(b.clearance("bury-it").covered).toMatchObject({ noLaterThan: true, at: noon + 2 * hour });
  });
});

describe("the camera's clock beside the app's moment", () => {
  const at = noon + hour;
  const withTaken = (taken: Json, more: What = {}, patch: Patch = {}) => {
    const b = book(trench);
    const id = picture(b, at, more);
    const patches = mediaRead(b, photo, { taken });
    return { b, id, ledger: patched(b, { ...patches, [id]: patch }) };
  };
  const clock = (text: string, offset?: string): Json => ({ text, source: "original", ...(offset ? { offset, offsetFrom: "tag" } : {}) });

  test("agrees by its own offset, and by the site's zone where it has none", () => {
    const settled = withTaken(clock("2026-06-01T08:59:30", "-04:00"));
    expect(keys(settled.ledger, settled.id)).toEqual(expect.arrayContaining(["camera-agrees", "zone-by-tag"]));
    const open = withTaken(clock("2026-06-01T08:59:30"));
    expect(line(open.ledger, open.id, "camera-agrees")?.speaks).toBe("for");
    // 8:59:30 in New York in June is 12:59:30 UTC
    expect(line(open.ledger, open.id, "zone-unknown")?.says.figures).toEqual({
      wallClock: "2026-06-01T08:59:30",
      firstInstant: at - 30_000,
    });
  });

  test("earlier: an older picture was put in; its own time is what is held beside the covering", () => {
    const { b, id } = withTaken(clock("2026-06-01T06:00:00", "-04:00"));
    const patches = mediaRead(b, photo, { taken: clock("2026-06-01T06:00:00", "-04:00") });
    b.covered("bury-it", "clear", {}, { at: at - 30 * minute });
    const ledger = patched(b, patches);
    // 10:00 UTC; five minutes of doubt and the camera's second: 13:00:00 − 1 s − 10:05:00.999
    expect(line(ledger, id, "camera-earlier")).toEqual({
      speaks: "against",
      says: {
        key: "photo.camera-earlier",
        figures: { wallClock: "2026-06-01T06:00:00", apartDuration: 3 * hour - 5 * minute - 1000 - 999 },
      },
    });
    expect(keys(ledger, id)).toContain("before-covering");
    expect(findingOf(ledger, "trench-open")?.verdict).toBe("within");
  });

  test("T09 a date of the future never wins: it is a clock that is off, and the app's moment counts", () => {
    const { b, id, ledger } = withTaken(clock("2099-01-01T00:00:00", "+00:00"));
    b.covered("bury-it", "clear", {}, { at: at + hour });
    expect(line(ledger, id, "camera-later")).toMatchObject({ speaks: "against", says: { figures: { wallClock: "2099-01-01T00:00:00" } } });
    expect(keys(patched(b), id)).toContain("before-covering");
  });

  test("a zone that nobody knows accuses only where every zone of the world would", () => {
    const judged = (text: string) => {
      const b = book(trench);
      b.covered("bury-it", "clear", {}, { at: noon });
      const id = picture(b, noon + 40 * hour);
      return keys(patched(b, mediaRead(b, photo, { taken: clock(text) })), id);
    };
    // 2 June 3:00 in the easternmost zone is 1 June 13:00 UTC: after noon by every zone; 1 June 22:00 is not
    expect(judged("2026-06-02T03:00:00")).toContain("after-covering");
    expect(judged("2026-06-01T22:00:00")).toContain("covering-undecided");
  });

  test("T01 an hour that comes twice keeps both its instants, whatever the day on which it is asked", () => {
    const b = book({ ...trench });
    const id = picture(b, Date.UTC(2026, 10, 2));
    const patches = mediaRead(b, photo, { taken: clock("2026-11-01T01:30:00") });
    const ledger = patched(b, patches);
    // New York leaves summer time on 1 November 2026 at 2:00 EDT: 1:30 EDT is 5:30 UTC, 1:30 EST is 6:30 UTC
    const found = line(ledger, id, "zone-unknown-twice");
    expect(found?.says.figures).toEqual({
      wallClock: "2026-11-01T01:30:00",
      firstInstant: Date.UTC(2026, 10, 1, 5, 30),
      secondInstant: Date.UTC(2026, 10, 1, 6, 30),
    });
    const sayer = makePictureSayer({ language: "en", units: "inch", zone: "America/New_York" });
    expect(found && sayer.line(found)).toContain("came twice: 1 November 2026, 1:30 EDT and 1 November 2026, 1:30 EST.");
    // the hour that is left out in March is no time of the site
    const spring = patched(b, mediaRead(b, photo, { taken: clock("2026-03-08T02:30:00") }));
    expect(line(spring, id, "zone-unknown")?.says.figures).toEqual({ wallClock: "2026-03-08T02:30:00" });
  });

  test("the satellites' time that no zone makes the camera's is told", () => {
    const b = book(trench);
    const id = picture(b, at);
    const taken = { taken: clock("2026-06-01T09:00:00"), satelliteTime: "2026-06-01T12:42:07Z" };
    expect(line(patched(b, mediaRead(b, photo, taken)), id, "satellite-differs")?.says.figures).toEqual({
      satelliteInstant: Date.UTC(2026, 5, 1, 12, 42, 7),
      wallClock: "2026-06-01T09:00:00",
    });
    const undated = { ...taken, notes: ["satellite-date-missing"] };
    expect(keys(patched(b, mediaRead(b, photo, undated)), id)).not.toContain("satellite-differs");
  });

  test.each([
    ["B03 a JPEG that was HEIC, its notes gone", ["metadata-missing"], "metadata-missing"],
    ["B15 a file with a JFIF head alone", ["metadata-missing"], "metadata-missing"],
    ["zeros", ["time-zeros"], "time-zeros"],
    ["no time among the notes", [], "time-missing"],
  ])("%s: the app's moment is its time, and the note speaks neither way", (_, notes, key) => {
    const b = book(trench);
    const id = picture(b, at);
    const ledger = patched(b, mediaRead(b, photo, { notes }));
    expect(line(ledger, id, "app-moment")).toMatchObject({ speaks: "for", says: { figures: { takenInstant: at } } });
    expect(line(ledger, id, key)?.speaks).toBe("neither");
  });

  test("T09 a phone an hour ahead: skew is kept, times are put right, camera and app agree still", () => {
    const b = book(trench);
    const id = picture(b, at + hour);
    const patches = mediaRead(b, photo, { taken: clock("2026-06-01T09:59:50", "-04:00") });
    const ledger = patched(b, { ...patches, [id]: { sent: at + hour + minute, received: at + minute } });
    const alone = {
      ...ledger,
      entries: ledger.entries.map((entry) => (entry.id === id ? { ...entry, author: { person: "x", phone: "ahead" } } : entry)),
    };
    expect(line(alone, id, "clock-off")?.says.figures).toEqual({ offDuration: hour });
    expect(line(alone, id, "app-moment")?.says.figures.takenInstant).toBe(at);
    expect(keys(alone, id)).toContain("camera-agrees");
  });

  test("its step's other entries: among them, or apart", () => {
    const b = book(trench);
    b.picture("trench-again", { photo: "d".repeat(64), taken: at }, { at });
    const near = picture(b, at + 20 * minute);
    const far = b.picture("trench-open", { photo: "e".repeat(64), taken: at + 26 * hour }, { at: at + 26 * hour });
    expect(line(patched(b), near, "among-its-step")?.speaks).toBe("for");
    // the last other entry of the step was made at 13:20
    expect(line(patched(b), far, "apart-from-its-step")).toMatchObject({
      speaks: "against",
      says: { figures: { count: "2", firstInstant: at, lastInstant: at + 20 * minute, apartDuration: 26 * hour - 20 * minute - 1000 } },
    });
  });
});

describe("where a picture was taken", () => {
  const at = noon + hour;
  const degree = (n: number): number => Math.round(n * 1e7);
  /** 41° N, 93.6° W; 0.001° of latitude is 111.195 m on the sphere. */
  const middle = { latitude: degree(41), longitude: degree(-93.6), accuracy: 5_000 };
  const north = (thousandths: number, accuracy?: number): Json => ({
    latitude: degree(41 + thousandths / 1000),
    longitude: degree(-93.6),
    ...(accuracy === undefined ? {} : { accuracy }),
  });
  const placed = (app: Json | undefined, camera?: Json, facts: What = {}) => {
    const b = book(trench);
    const site = b.enter("site-located", { how: "from a map", reaches: 100_000_000 });
    const id = picture(b, at);
    const patches = mediaRead(b, photo, facts, camera);
    return { id, ledger: patched(b, { ...patches, [site]: { where: middle }, ...(app === undefined ? {} : { [id]: { where: app } }) }) };
  };

  test("at the site, off it, and too close to call: distance, doubt and how far the site reaches", () => {
    const told = (thousandths: number, accuracy: number) => {
      const { id, ledger } = placed(north(thousandths, accuracy));
      return lines(ledger, id).find(({ says }) => says.key.startsWith("photo.app-place-"));
    };
    expect(told(0.5, 6_000)).toMatchObject({ speaks: "for", says: { key: "photo.app-place-at-site" } });
    expect(told(5, 6_000)).toMatchObject({ speaks: "against", says: { key: "photo.app-place-off-site" } });
    expect(told(0.85, 12_000)).toMatchObject({ speaks: "neither", says: { key: "photo.app-place-undecided" } });
    // 0.5e-3 π/180 × 6,371,008.8 m = 55.597 m; √(5² + 6² + (0.006 × 55.597)²) = 7.817 m
    const { awayDistance, doubtDistance, reachDistance } = told(0.5, 6_000)?.says.figures ?? {};
    expect(Number(awayDistance) / 1e6).toBeCloseTo(55.597, 2);
    expect(Number(doubtDistance) / 1e6).toBeCloseTo(7.817, 2);
    expect(reachDistance).toBe(100_000_000);
  });

  test("Exif's positioning error counts as a standard uncertainty, a missing accuracy as 100 m", () => {
    const doubt = (accuracy?: number) => {
      const { id, ledger } = placed(undefined, north(0.5, accuracy));
      return Number(lines(ledger, id).find(({ says }) => says.key.startsWith("photo.camera-place-"))?.says.figures.doubtDistance) / 1e6;
    };
    // √(5² + (2 × 6)² + 0.334²), √(5² + 100² + 0.334²)
    expect(doubt(6_000)).toBeCloseTo(13.004, 2);
    expect(doubt()).toBeCloseTo(100.125, 2);
  });

  test("B02 the app's own fix stands beside the photo, with its accuracy and age; the camera's place is optional", () => {
    const { id, ledger } = placed({ ...(north(0.1, 8_000) as object), age: 180_000 }, undefined, { notes: ["position-missing"] });
    expect(keys(ledger, id)).toEqual(expect.arrayContaining(["app-place-at-site", "app-place-old", "position-missing"]));
    expect(line(ledger, id, "position-missing")?.speaks).toBe("neither");
  });

  test("B01 a place that the phone withheld is said so: no Null Island, not away from the site", () => {
    const { id, ledger } = placed(north(0.1, 8_000), undefined, { notes: ["position-withheld"] });
    expect(line(ledger, id, "position-withheld")?.speaks).toBe("neither");
    expect(keys(ledger, id).filter((key) => key.startsWith("camera-place") || key === "position-missing")).toEqual([]);
  });

  test("a place that was taken out of this edition is said so, and is not called missing", () => {
    const { id, ledger } = placed(north(0.1, 8_000));
    expect(keys(ledger, id)).toContain("place-taken-out");
  });

  test("the two places agree or differ by their doubts", () => {
    const agree = placed(north(0.1, 8_000), north(0.15, 8_000));
    expect(line(agree.ledger, agree.id, "places-agree")?.speaks).toBe("for");
    const differ = placed(north(0.1, 8_000), north(900, 8_000));
    expect(line(differ.ledger, differ.id, "places-differ")?.speaks).toBe("against");
    expect(line(differ.ledger, differ.id, "camera-place-off-site")?.speaks).toBe("against");
  });

  test("no place of the site, no place of the picture: notes, and no finding", () => {
    const b = book(trench);
    const id = picture(b, at);
    expect(keys(patched(b), id)).toEqual(expect.arrayContaining(["no-app-place", "not-read-yet"]));
    expect(keys(patched(b, { [id]: { where: north(3) } }), id)).toContain("site-not-located");
    expect(findingOf(patched(b), "trench-open")?.verdict).toBe("within");
  });

  test("what is no fix is none: text, halves, places beyond the poles", () => {
    for (const where of [
      "41 N",
      { latitude: degree(41) },
      { latitude: degree(91), longitude: 0 },
      { latitude: 0.5, longitude: 0 },
      null,
    ] as Json[]) {
      const { id, ledger } = placed(where);
      expect(keys(ledger, id)).toContain("no-app-place");
    }
  });
});

describe("who looked, and what else the ledger tells", () => {
  test("looked at by, on: in the finding's sentence and among the picture's lines, in both languages", () => {
    const b = book(trench);
    const id = picture(b, noon + hour);
    const look = b.enter("picture-looked-at", { picture: id, says: "does not show it" }, { phone: "desk", at: noon + 5 * hour });
    expect(line(patched(b), id, "looked-does-not")).toEqual({
      speaks: "against",
      says: { key: "photo.looked-does-not", figures: { lookedEntry: look, lookedInstant: noon + 5 * hour } },
    });
    const state = jobState(patched(b));
    const finding = findings(state).find(({ check }) => check === "trench-open");
    const said = (language: "en" | "es") => {
      const sayer = makeSayer({
        language,
        units: "inch",
        zone: "America/New_York",
        sheet: trench,
        behind: () => ({ name: "Kim Alder", reason: "" }),
        look: () => ({ entry: look, at: noon + 5 * hour }),
      });
      return finding && sayer.finding(finding);
    };
    expect(said("en")).toContain("it does not show it. Looked at by Kim Alder, 1 June 2026, 13:00 EDT.");
    expect(said("es")).toContain("Mirada por Kim Alder, 1 de junio de 2026, 13:00 EDT.");
  });

  test("the look that a finding speaks of is the last at the picture that stands for all", () => {
    const b = book(trench);
    const first = picture(b, noon + hour);
    const second = b.picture("trench-open", { photo: "b".repeat(64) }, { at: noon + 2 * hour });
    b.enter("picture-looked-at", { picture: first, says: "does not show it" }, { at: noon + 3 * hour });
    b.enter("picture-looked-at", { picture: second, says: "cannot tell" }, { at: noon + 4 * hour });
    const shows = b.enter("picture-looked-at", { picture: second, says: "shows it" }, { at: noon + 5 * hour });
    const finding = findingOf(patched(b), "trench-open");
    expect(finding?.says.key).toBe("picture.shows");
    expect(finding && lookBehind(jobState(patched(b)), finding)?.id).toBe(shows);
    const unseen = findingOf(patched(b), "trench-again");
    expect(unseen && lookBehind(jobState(patched(b)), unseen)).toBeUndefined();
  });

  test("to look at: what holds a covering and nobody saw, open coverings first; what holds none never", () => {
    const sheet = bench({
      items: [
        pictureItem("buried-one"),
        pictureItem("closed-one", { holds: "close-it" }),
        pictureItem("for-the-album", { weight: "asked" }),
      ],
    });
    const b = book(sheet);
    const [buried, closed] = [b.picture("buried-one"), b.picture("closed-one")];
    b.picture("for-the-album");
    const walk = () => picturesToLookAt(jobState(patched(b))).map(({ picture: { id } }) => id);
    expect(walk()).toEqual([buried, closed]);
    b.covered("bury-it");
    expect(walk()).toEqual([closed, buried]);
    b.enter("picture-looked-at", { picture: closed, says: "cannot tell" });
    expect(walk()).toEqual([buried]);
    b.enter("reworked", { about: { item: "buried-one" }, done: "dug out", minutes: 20 });
    expect(walk()).toEqual([]);
  });

  test("D08 the same photo put to two pictures of one job is a hint that speaks neither way", () => {
    const b = book(trench);
    const id = picture(b, noon + hour);
    b.picture("trench-again", { photo, taken: noon + hour });
    expect(line(patched(b), id, "same-photo")).toMatchObject({ speaks: "neither", says: { figures: { count: "1" } } });
    expect(findingOf(patched(b), "trench-open")?.verdict).toBe("within");
  });

  test("facts that are not in their shape take nothing with them", () => {
    const b = book(trench);
    const id = picture(b, noon + hour);
    for (const facts of [
      null,
      7,
      [],
      { taken: { text: "2026-02-30T10:00:00" } },
      { taken: 5, notes: "none" },
      { notes: [1, null] },
    ] as Json[]) {
      b.enter("picture-read", { photo, facts });
      expect(keys(patched(b), id)).toContain("app-moment");
      expect(keys(patched(b), id).some((key) => key.startsWith("camera-"))).toBe(false);
    }
  });
});
