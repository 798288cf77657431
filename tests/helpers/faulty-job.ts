import type { Entry, JobLedger } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";
import { afterTwoDays, twoDayLedger } from "../samples/two-day-job.ts";

const minute = 60_000;

/** What goes wrong on the two-day job, on a second phone whose clock is 40 minutes slow. */
function faults(idOf: (item: string, tag?: string) => string): readonly (readonly [kind: string, what: unknown])[] {
  const named = (item: string, tag?: string) => ({ id: idOf(item, tag), digest: "" });
  const correct = (item: string, replace: object, tag?: string) => ({ entry: named(item, tag), reason: "misread", replace });
  return [
    [
      "design-set",
      { figures: { cordLength: "unknown" }, switches: { "make-up-valve": true, "retrofit-job": true }, reason: "asked by the customer" },
    ],
    ["corrected", correct("cover-shallowest", { typed: "7 1/16" })],
    ["departure-agreed", { about: { check: "cover-depth" }, lower: 150_000, reason: "rock below" }],
    ["corrected", correct("rim-place-3", { typed: "41 8/16" })],
    ["corrected", correct("mark-last", { typed: "12 7/16" })],
    ["corrected", correct("gasket-wet-side", { judged: "unreadable" }, "A")],
    ["concession", { about: { item: "gasket-wet-side", tag: "A" }, extent: "this fitting", reason: "seen by two" }],
    ["picture-looked-at", { picture: idOf("underlay-picture", "A"), says: "does not show it" }],
    ["picture-looked-at", { picture: idOf("bed-screeded"), says: "cannot tell" }],
    ["corrected", { entry: named("edge-deburred", "A"), reason: "never answered", withdrawn: true }],
    ["go-ahead", { covering: "backfill-basin", reason: "rain", role: "crew" }],
    ["could-not-be-taken", { about: { item: "whole-run" }, reason: "filled before the phone was there" }],
    ["does-not-apply", { about: { item: "seams-upper-over", tag: "A" }, reason: "one piece", role: "crew" }],
    ["does-not-apply", { about: { item: "no-belly" }, reason: "flat run", role: "crew" }],
    ["corrected", correct("patch-beyond-cut", { typed: "1 0/16" }, "A")],
    ["reading-taken", { item: "liner-lap", tag: "A", typed: "9 8/16", unit: "in", placing: "turf-gravel" }],
    ["reworked", { about: { check: "lip-level", tag: "A" }, done: "base tamped again", minutes: 25 }],
    ["reading-taken", { item: "lip-gap-first", tag: "A", typed: "1/32", unit: "in" }],
    ["reading-taken", { item: "lip-gap-turned", tag: "A", typed: "2/32", unit: "in" }],
    ["reading-taken", { item: "lip-rock-gap-first", tag: "A", typed: "14/32", unit: "in" }],
    ["answered", { item: "numbers-dry", tag: "1", choice: "one-wet" }],
    ["tag-named", { set: "edge-stretch", tag: "C", hiddenBy: "trim-liner-edge", description: "behind the falls" }],
    ["covering-announced", { covering: "stone-over-basin", about: afterTwoDays + 600 * minute }],
    ["covered", { covering: "stone-over-basin", shown: "clear", lines: [], sheet: "", rules: 1, restedOn: [] }],
    ["left-to-do", { text: "lights", by: "2026-07-01", about: { item: "customer-told" } }],
    ["a-kind-of-the-future", { item: "bed-screeded", any: [1, "thing"] }],
    [
      "moved-in",
      {
        from: "another-job",
        reason: "filed wrong",
        entries: [
          {
            id: "moved-one",
            kind: "picture-taken",
            author: { person: "p", phone: "phone-three" },
            run: 4,
            made: afterTwoDays - 900 * minute,
            what: { item: "finished-picture", photo: "f".repeat(64), bytes: 1, type: "image/jpeg" },
          },
        ],
      },
    ],
    ["reading-taken", undefined],
  ];
}

/** The two-day job with something of everything wrong: what the frozen ledgers of the rules are made of. */
export function faultyJob(): JobLedger {
  const ledger = twoDayLedger(defaultSheet(), { order: "as listed" });
  const idOf = (item: string, tag?: string): string => {
    const found = ledger.entries.find(({ what }) => {
      const words = what as { item?: string; tag?: string };
      return words.item === item && words.tag === tag;
    });
    if (found === undefined) throw new Error(`no entry of ${item} ${tag ?? ""}`);
    return found.id;
  };
  const slow = 40 * minute;
  const odd = faults(idOf).map(
    ([kind, what], i): Entry => ({
      id: `odd-${i + 1}`,
      digest: `odd-${i + 1}`,
      kind,
      author: { person: "person-two", phone: "phone-two" },
      run: i + 1,
      made: afterTwoDays + i * minute - slow,
      sent: afterTwoDays + 120 * minute - slow,
      received: afterTwoDays + 120 * minute,
      number: ledger.entries.length + i + 1,
      ...(what === undefined ? {} : { what: what as Json }),
    }),
  );
  const agreed: Entry = {
    id: "agreed",
    digest: "agreed",
    kind: "departure-agreed",
    author: { person: "person-three", phone: "phone-office" },
    run: 1,
    made: afterTwoDays - 2 * 24 * 60 * minute,
    sent: afterTwoDays - 2 * 24 * 60 * minute,
    received: afterTwoDays - 2 * 24 * 60 * minute,
    number: ledger.entries.length + odd.length + 1,
    what: { about: { check: "patch-width", tag: "A" }, lower: 20_000, reason: "piece cut short" },
  };
  return { ...ledger, entries: [...ledger.entries, ...odd, agreed] };
}

/** A `now` after all of it. */
export const afterFaults = afterTwoDays + 24 * 60 * minute;
