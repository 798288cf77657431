import type { Json } from "../ledger/index.ts";
import { type FactKind, inspectionStates } from "./fact.ts";
import { among, anyText, eachOf, eitherOf, finite, integer, listOf, objectOf, recordOf, type Shape, yesNo } from "./shape.ts";

const saying = (fields: Parameters<typeof objectOf>[0]): Shape => objectOf(fields, "kept");
const typed = saying({ typed: anyText, unit: anyText });
const about = saying({ "item?": anyText, "check?": anyText, "tag?": anyText });
const aboutOrStep = saying({ "item?": anyText, "check?": anyText, "tag?": anyText, "step?": anyText });
const reference = saying({ id: anyText });
const role = among("crew", "office", "company owner");
const covering = { covering: anyText };
const said = { about, reason: anyText };

const spot = eachOf(integer, integer, integer);

const movedEntry = saying({
  id: anyText,
  kind: anyText,
  author: saying({ person: anyText, phone: anyText }),
  run: finite,
  made: finite,
});

/**
 * What must be there before the core reads a fact of its kind. The wire has judged what phones send more strictly; this
 * also meets corrected words, entries moved in from another job, and what a newer program wrote.
 */
const shapes: Partial<Readonly<Record<FactKind, Shape>>> = {
  "job-opened": saying({
    title: anyText,
    "ownNumber?": anyText,
    zone: anyText,
    language: among("en", "es"),
    units: among("inch", "metric"),
    "order?": anyText,
    "invoice?": anyText,
    "site?": anyText,
    "crew?": listOf(anyText),
  }),
  "opened-late": saying({ reason: anyText, "steps?": listOf(anyText), "coverings?": listOf(anyText) }),
  "particulars-set": saying({ "title?": anyText, "order?": anyText, "invoice?": anyText, "crew?": listOf(anyText) }),
  "site-taken-over": saying({ site: anyText, "heightMark?": anyText, "tieMarks?": listOf(anyText) }),
  "version-taken-over": saying({ thing: among("sheet", "kit card", "settings"), name: anyText, number: finite, digest: anyText }),
  "design-set": saying({ "figures?": recordOf(eitherOf(typed, among("unknown"))), "switches?": recordOf(yesNo) }),
  "tag-named": saying({ set: anyText, tag: anyText, hiddenBy: anyText, "description?": anyText }),
  "set-up-made": saying({ instrument: anyText, "receiver?": among("fine", "coarse"), "distance?": typed }),
  "reading-taken": saying({
    item: anyText,
    "tag?": anyText,
    typed: anyText,
    unit: anyText,
    "setUp?": anyText,
    "instrument?": anyText,
    "placing?": anyText,
    "receiver?": among("fine", "coarse"),
    "distance?": typed,
    "mark?": anyText,
    "side?": among("left", "right"),
    "at?": finite,
  }),
  "read-again": saying({
    reading: anyText,
    item: anyText,
    "tag?": anyText,
    typed: anyText,
    unit: anyText,
    "instrument?": anyText,
    "setUp?": anyText,
  }),
  "picture-taken": saying({ item: anyText, "tag?": anyText, photo: anyText, "judged?": among("readable", "unreadable") }),
  "picture-read": saying({ photo: anyText }),
  "photo-measured": saying({
    item: anyText,
    "tag?": anyText,
    photo: anyText,
    width: integer,
    height: integer,
    paper: among("letter", "a4"),
    "ruler?": typed,
    codes: listOf(saying({ place: among(0, 1, 2, 3), corners: eachOf(spot, spot, spot, spot) })),
    "lens?": saying({ distortion: integer, within: integer }),
    from: spot,
    to: spot,
  }),
  "picture-looked-at": saying({ picture: anyText, says: among("shows it", "does not show it", "cannot tell") }),
  answered: saying({ item: anyText, "tag?": anyText, choice: anyText }),
  "note-for-record": saying({ text: anyText, "step?": anyText, "tag?": anyText }),
  "note-for-office": saying({ text: anyText }),
  "paper-added": saying({ title: anyText, paper: anyText, "photo?": anyText, "pdf?": anyText }),
  "visit-begun": saying({ "note?": anyText }),
  "visit-ended": saying({ "staysOpen?": anyText, "note?": anyText }),
  "does-not-apply": saying({ ...said, role }),
  "could-not-be-taken": saying(said),
  "received-otherwise": saying({ item: anyText, "tag?": anyText, photo: anyText }),
  "done-by-others": saying({ what: anyText, "step?": anyText, "photo?": anyText, "paper?": anyText }),
  "inspected-by-authority": saying({
    what: anyText,
    state: among(...inspectionStates),
    "number?": anyText,
    "day?": anyText,
    "photo?": anyText,
  }),
  "site-located": saying({ how: anyText, "reaches?": integer }),
  corrected: saying({ entry: reference, "withdrawn?": yesNo, "replace?": recordOf(() => []) }),
  "moved-out": saying({ entries: listOf(reference) }),
  "moved-in": saying({ from: anyText, entries: listOf(movedEntry) }),
  "covering-announced": saying({ ...covering, about: finite }),
  covered: saying({ ...covering, shown: among("clear", "on word", "not yet"), lines: listOf(anyText), "at?": finite }),
  "opened-up-again": saying({ ...covering, exposed: eitherOf(among("all"), listOf(about)) }),
  "rework-asked": saying({ about }),
  reworked: saying({ about }),
  "looked-again": saying({ about }),
  "go-ahead": saying({ ...covering, role, "about?": listOf(about), "confirms?": anyText }),
  "departure-agreed": saying({ about, "lower?": integer, "upper?": integer }),
  "go-ahead-denied": saying({ goAhead: anyText, reason: anyText }),
  concession: saying({ about, "customerSaid?": anyText }),
  "left-to-do": saying({ text: anyText, by: anyText, "about?": aboutOrStep }),
  "left-to-do-done": saying({ entry: reference }),
  "region-blurred": saying({ photo: anyText, rendition: anyText, reason: anyText }),
  "body-withheld": saying({ entry: reference, parts: listOf(among("what", "who", "where")), reason: anyText }),
  "record-issued": saying({ version: integer, edition: anyText, "seal?": anyText, "key?": anyText }),
  "record-released": saying({ version: integer, to: anyText }),
  "rules-moved": saying({ from: integer, to: integer, changed: listOf(anyText) }),
  signed: saying({ relation: anyText, "textDigest?": anyText, "text?": anyText }),
  declined: saying({ objection: anyText }),
  "not-reached": saying({ how: anyText }),
  "callback-opened": saying({ symptom: anyText, "said?": anyText, "day?": anyText }),
  "callback-closed": saying({
    cause: anyText,
    "callback?": anyText,
    "confirmed?": yesNo,
    "supposed?": anyText,
    "part?": anyText,
    "borneBy?": anyText,
    "minutes?": finite,
    "travelMinutes?": finite,
    "partsCost?": finite,
    "recovered?": finite,
  }),
  "service-done": saying({ service: anyText, date: anyText }),
  "delivered-unsigned": saying({
    how: anyText,
    day: anyText,
    to: anyText,
    because: among("not reached", "declined", "vacant"),
    "objection?": anyText,
  }),
  "in-use": saying({ since: anyText, how: anyText }),
  "cover-started": saying({ rule: among("invoice paid", "date of sale"), day: anyText, "part?": anyText }),
  "part-kept": saying({ part: anyText, why: anyText }),
  "part-replaced": saying({ part: anyText, day: anyText, why: among("under warranty", "sold"), "serial?": anyText }),
  "part-registered": saying({ part: anyText, day: anyText, "number?": anyText }),
  "new-owner": saying({ day: anyText }),
};

/** Whether the core can read what a fact of this kind says. A kind that it does not know says what it likes. */
export function isUnderstood(kind: string, what: Json): boolean {
  if (!Object.hasOwn(shapes, kind)) return true;
  return shapes[kind as FactKind]?.(what, "what").length === 0;
}
