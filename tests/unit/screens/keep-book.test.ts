import { describe, expect, test } from "vitest";
import { type Entry, factsOf, jobState } from "#core/job/index.ts";
import { type Json, type LedgerEntry, type SealedEntry, seal } from "#core/ledger/index.ts";
import { announcedAndGone } from "#core/screens/field/announced.ts";
import { bookMaker, bookOf, glanceOf } from "#core/screens/field/keep/book.ts";
import type { Book } from "#core/screens/field/keep/index.ts";
import type { KeptJob, OwnEntry, OwnPhoto } from "#core/screens/field/keep/shapes.ts";
import { inOrder, openFirst } from "#core/screens/field/next.ts";
import type { SentEntry } from "#core/wire/index.ts";
import { digest } from "#infra/node-digest.ts";
import { salt } from "../../helpers/edge.ts";
import { bench, book, lengthItem, minute, pictureItem, sheetDigest, start } from "../../helpers/job.ts";

const hour = 60 * minute;
const sheet = bench({ items: [lengthItem("a-depth"), lengthItem("a-width"), pictureItem("a-picture")] });
const phone = "phone-here";

async function sealedBy(phoneId: string, run: number, made: number, kind: string, what: Json): Promise<SealedEntry> {
  const id = `${phoneId}-${run}`;
  const author = { person: "p1", phone: phoneId };
  const outcome = await seal(digest, { job: "job-1", id, kind, author, run, made, contents: { what }, salts: { what: salt() } });
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
}

const own = async (run: number, made: number, kind: string, what: Json, standing: OwnEntry["standing"] = "not sent"): Promise<OwnEntry> => {
  const entry = (await sealedBy(phone, run, made, kind, what)) as unknown as SentEntry;
  return { run, job: "job-1", id: entry.sealed.id, entry, standing };
};

const reading = (item: string, typed: string): Json => ({ item, typed, unit: "in" });

/** What the edge has: the job as opened, and these of its phones at these instants of its clock. */
async function kept(...more: readonly { readonly sealed: SealedEntry; readonly received: number }[]): Promise<KeptJob> {
  const opened = { title: "Bench job", zone: "UTC", language: "en", units: "inch" };
  const desk = [
    await sealedBy("desk", 0, start, "job-opened", opened),
    await sealedBy("desk", 1, start, "version-taken-over", { thing: "sheet", name: sheet.id, number: 1, digest: sheetDigest }),
  ];
  const all = [...desk.map((sealed) => ({ sealed, received: start })), ...more];
  const entries = all.map(({ sealed: { sealed, body }, received }, i) => ({
    envelope: { ...sealed, number: i + 1, sent: received, received, before: "0".repeat(64) },
    body,
  })) as unknown as LedgerEntry[];
  return {
    job: "job-1",
    title: "Bench job",
    ledger: {
      format: 1,
      job: "job-1",
      head: { number: entries.length, hash: "0".repeat(64) },
      entries,
      versions: [{ kind: "sheet", digest: sheetDigest, content: sheet as unknown as Json }],
    } as unknown as KeptJob["ledger"],
    digests: Object.fromEntries(all.map(({ sealed: { sealed, digest: known } }) => [sealed.id, known])),
    photos: {},
    readAt: start,
  };
}

const typedOf = (ledger: ReturnType<typeof bookOf>): readonly string[] =>
  factsOf(jobState(ledger), "reading-taken").map(({ what }) => String(what.typed));

describe("a job as this phone knows it", () => {
  test("holds what is not sent and what the edge took beside what the kept ledger holds; each once, the refused not at all", async () => {
    const first = await own(0, start + hour, "reading-taken", reading("a-depth", "4"));
    const taken = await own(1, start + 2 * hour, "reading-taken", reading("a-depth", "5"), "acknowledged");
    const refused = await own(2, start + 3 * hour, "reading-taken", reading("a-depth", "6"), "refused");
    const elsewhere = { ...(await own(3, start + 4 * hour, "reading-taken", reading("a-depth", "7"))), job: "job-2" };
    const mine = [first, taken, refused, elsewhere];
    expect(typedOf(bookOf(await kept(), mine, 0))).toEqual(["4", "5"]);
    const later = await kept({ sealed: first.entry as unknown as SealedEntry, received: start + 5 * hour });
    // the store still has the first one, since another page read the ledger
    expect(typedOf(bookOf(later, mine, 0))).toEqual(["4", "5"]);
  });

  test("names each entry by the digest that other entries refer to", async () => {
    const one = await own(0, start + hour, "reading-taken", reading("a-depth", "4"));
    const there = await sealedBy("phone-there", 0, start, "reading-taken", reading("a-depth", "3"));
    const { entries } = bookOf(await kept({ sealed: there, received: start }), [one], 0);
    const byId = new Map(entries.map(({ id, digest: known }: Entry) => [id, known]));
    expect(byId.get(one.id)).toMatch(/^[0-9a-f]{64}$/);
    expect(byId.get(one.id)).toBe(one.entry.digest);
    expect(byId.get("phone-there-0")).toBe(there.digest);
  });

  test("a phone three hours ahead: its own entries stand at the edge's clock, between those of a phone that is right", async () => {
    const there = [
      await sealedBy("phone-there", 0, start + hour, "reading-taken", reading("a-depth", "before")),
      await sealedBy("phone-there", 1, start + 2 * hour, "reading-taken", reading("a-depth", "after")),
    ];
    const job = await kept(...there.map((sealed) => ({ sealed, received: sealed.sealed.made })));
    const truly = start + hour + 30 * minute;
    const mine = [await own(0, truly + 3 * hour, "reading-taken", reading("a-depth", "mine"))];
    const state = jobState(bookOf(job, mine, -3 * hour));
    const facts = factsOf(state, "reading-taken");
    expect(facts.map(({ what }) => what.typed)).toEqual(["before", "mine", "after"]);
    expect(facts[1]?.at).toBe(truly);
    // both clocks stay: what the phone's clock said is in the entry itself
    expect(facts[1]?.entry.made).toBe(truly + 3 * hour);
  });

  test("is made anew for a new entry, a new standing, a new ledger and another clock, and for nothing else", async () => {
    const make = bookMaker();
    const job = await kept();
    const one = await own(0, start + hour, "reading-taken", reading("a-depth", "4"));
    const before = make(job, [one], 0);
    expect(before.unseen).toEqual([one]);
    expect(make(job, [{ ...one }], 0)).toBe(before);
    expect(make(job, [one, { ...one, run: 9, job: "job-2" }], 0)).toBe(before);
    const refused = make(job, [{ ...one, standing: "refused" }], 0);
    expect(refused).not.toBe(before);
    expect([refused.unseen.length, refused.refused.length]).toEqual([0, 1]);
    const shifted = make(job, [one], 2 * hour);
    expect(shifted.state.facts.find(({ id }) => id === one.id)?.at).toBe(start + 3 * hour);
    // the store gives another object each time; a later reading of the edge is another ledger
    expect(make(structuredClone(job), [one], 2 * hour)).toBe(shifted);
    const later = make({ ...job, readAt: job.readAt + 1 }, [one], 2 * hour);
    expect(later).not.toBe(shifted);
    // that the edge has taken an entry is told, and nothing is judged anew for it
    const taken = make({ ...job, readAt: job.readAt + 1 }, [{ ...one, standing: "acknowledged" }], 2 * hour);
    expect(taken).not.toBe(later);
    expect(taken.findings).toBe(later.findings);
    expect(taken.unseen).toEqual([]);
  });
});

describe("what is open in the ground", () => {
  const named = (title: string, make: (b: ReturnType<typeof book>) => void): Book => {
    const b = book(bench({ items: [lengthItem("a-depth"), lengthItem("a-width"), pictureItem("last", { holds: "close-it" })] }));
    make(b);
    const { state, all } = b.done();
    return { kept: { title }, state, findings: all } as unknown as Book;
  };
  const now = start + hour;
  const announce = (b: ReturnType<typeof book>, covering: string, about: number): string =>
    b.enter("covering-announced", { covering, about });
  const bothCovered = (b: ReturnType<typeof book>): void => {
    b.covered("bury-it", "not yet");
    b.covered("close-it", "not yet");
  };

  test("the covering announced soonest comes first, then the order of the tolerance sheet; what is covered is not open", () => {
    const open = (make: (b: ReturnType<typeof book>) => void): readonly string[] => {
      const b = book(bench({ items: [lengthItem("a-depth")] }));
      make(b);
      return openFirst(b.done(now).clearances).map(({ covering }) => covering);
    };
    expect(open(() => {})).toEqual(["bury-it", "close-it"]);
    expect(open((b) => announce(b, "close-it", now + hour))).toEqual(["close-it", "bury-it"]);
    expect(
      open((b) => {
        announce(b, "close-it", now + 2 * hour);
        announce(b, "bury-it", now + hour);
      }),
    ).toEqual(["bury-it", "close-it"]);
    expect(open((b) => b.covered("bury-it", "not yet"))).toEqual(["close-it"]);
  });

  test("jobs: announced soonest, then nearest to clear, then by name, and one with nothing open last", () => {
    const jobs = [
      named("Done", bothCovered),
      named("Zeta, two lack", () => {}),
      named("Alpha, two lack", () => {}),
      named("Mid, one lacks", (b) => b.read("a-depth", "4 0/16")),
      named("Late", (b) => announce(b, "bury-it", now + 3 * hour)),
      named("Soon", (b) => announce(b, "close-it", now + hour)),
    ];
    expect(inOrder(jobs.map((job) => ({ title: job.kept.title, glance: glanceOf(job, now) }))).map(({ title }) => title)).toEqual([
      "Soon",
      "Late",
      "Mid, one lacks",
      "Alpha, two lack",
      "Zeta, two lack",
      "Done",
    ]);
  });
});

describe("pictures that were announced and are gone", () => {
  const hash = (digit: string): string => digit.repeat(64);
  const photoOf = (digit: string, standing: OwnPhoto["standing"]): OwnPhoto =>
    ({ sha256: hash(digit), job: "job-1", run: 1, type: "image/jpeg", bytes: 1, taken: start, standing }) as OwnPhoto;
  const picture = (digit: string): Json => ({ item: "a-picture", photo: hash(digit), bytes: 1, type: "image/jpeg" });

  test("are those of this phone whose bytes are neither at the edge nor here; lost is not here", async () => {
    const sealed = await Promise.all(
      ["1", "2", "3", "4", "5"].map((digit, run) => sealedBy(phone, run, start, "picture-taken", picture(digit))),
    );
    const other = await sealedBy("phone-there", 0, start, "picture-taken", picture("6"));
    const job = {
      ...(await kept(...[...sealed, other].map((one) => ({ sealed: one, received: start })))),
      photos: { [hash("1")]: { sha256: hash("1"), bytes: 1, type: "image/jpeg", state: "stored" as const } },
    };
    const made = bookMaker()(job, [], 0);
    const photos = [photoOf("2", "not sent"), photoOf("3", "acknowledged"), photoOf("4", "lost")];
    // 1 is stored at the edge, 2 waits here, 3 went, 4 was lost here, 5 is nowhere, 6 is another phone's
    expect(announcedAndGone({ books: [made], photos, phone }).map((gone) => gone.photo)).toEqual([hash("4"), hash("5")]);
    expect(announcedAndGone({ books: [made], photos, phone })[0]).toEqual({
      job: "job-1",
      title: "Bench job",
      photo: hash("4"),
      item: "a-picture",
    });
  });
});
