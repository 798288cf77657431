import { describe, expect, test } from "vitest";
import { phoneVisits, recordBeforeMove, withCorrections } from "#core/job/index.ts";
import { answerItem, bench, book, minute, pictureItem } from "../../helpers/job.ts";

const sheet = bench({ items: [answerItem("pit-dry"), pictureItem("pit-seen")] });
const hour = 60 * minute;

describe("the visits that phones tell of", () => {
  test("up to the end of the visit, to the begin of the next, or until the phone was elsewhere; a desk makes none", () => {
    const b = book(sheet);
    // the opening stands on phone-one's own number in these tests and belongs to its job alone
    const first = [b.answer("pit-dry", "is-dry"), b.picture("pit-seen"), b.enter("visit-ended", {})];
    const second = [b.answer("pit-dry", "is-wet")];
    const third = [b.enter("visit-begun", {}), b.picture("pit-seen")];
    const fourth = [b.picture("pit-seen", {}, { at: b.clock() + 5 * hour })];
    b.enter("concession", { about: { item: "pit-dry" }, extent: "x", reason: "y" }, { phone: "desk" });
    const other = [b.answer("pit-dry", "is-dry", { phone: "phone-two" })];
    const visits = phoneVisits(b.done().state);
    expect(visits.map(({ facts }) => facts.map(({ id }) => id))).toEqual([other, fourth, third, second, first]);
    expect(visits.at(-1)).toMatchObject({ phone: "phone-one", person: "person of phone-one", to: visits.at(-1)?.facts.at(-1)?.at });
  });

  test("what was moved out is gone, and what came in is not moved on", () => {
    const b = book(sheet);
    const gone = b.picture("pit-seen");
    const stays = b.picture("pit-seen");
    b.enter("moved-out", { entries: [{ id: gone, digest: gone }], to: "elsewhere", reason: "wrong yard" }, { phone: "desk" });
    const moved = { id: "came", kind: "picture-taken", author: { person: "p", phone: "far" }, run: 1, made: b.clock() };
    const what = { item: "pit-seen", photo: "f".repeat(64), bytes: 1, type: "image/jpeg" };
    b.enter("moved-in", { from: "elsewhere", reason: "wrong yard", entries: [{ ...moved, what }] }, { phone: "desk" });
    expect(phoneVisits(b.done().state).flatMap(({ facts }) => facts.map(({ id }) => id))).toEqual([stays]);
  });

  test("what is moved takes along what corrects it, and what corrects that", () => {
    const b = book(sheet);
    const [one, other] = [b.answer("pit-dry", "is-wet"), b.answer("pit-dry", "is-dry")];
    const correct = (id: string) => b.enter("corrected", { entry: { id, digest: id }, reason: "slip", replace: { choice: "is-dry" } });
    const first = correct(one);
    const second = correct(first);
    correct(other);
    expect([...withCorrections(b.done().state, [one])].sort()).toEqual([one, first, second].sort());
  });

  test("a record that was issued before a move is to be issued again; one issued after it is not", () => {
    const b = book(sheet);
    const picture = b.picture("pit-seen");
    const issue = (version: number) =>
      b.enter("record-issued", { version, head: { number: 1, hash: "0" }, modelDigest: "0", edition: "customer" }, { phone: "desk" });
    issue(1);
    expect(recordBeforeMove(b.done().state)).toBeUndefined();
    b.enter("moved-out", { entries: [{ id: picture, digest: picture }], to: "elsewhere", reason: "x" }, { phone: "desk" });
    expect(recordBeforeMove(b.done().state)).toBe(1);
    issue(2);
    expect(recordBeforeMove(b.done().state)).toBeUndefined();
  });
});
