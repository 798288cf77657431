import type { Item, ToleranceSheet } from "#core/job/index.ts";
import type { drawing } from "./drawings.ts";
import { type JobBook, type Phone, sha256Hex } from "./phone.ts";
import { printedCard, rendering } from "./rendering.ts";
import { scenes } from "./scenes.ts";
import {
  type Entered,
  type JobScript,
  type Line,
  moment,
  OFFSET,
  type Reference,
  sketchOfItem,
  sketchOfStep,
  wallClock,
} from "./script.ts";

/** Photos that a phone holds, by the SHA-256 of their bytes. */
export type Photos = Map<string, Uint8Array<ArrayBuffer>>;

export interface Entering {
  readonly phone: Phone;
  readonly book: JobBook;
  readonly sheet: ToleranceSheet;
  readonly script: Pick<JobScript, "title" | "latitude" | "longitude" | "marks" | "sides" | "measured">;
  readonly photos: Photos;
  readonly labels: Map<string, Reference>;
  /** Where a fix is taken with each picture. */
  readonly fixes: boolean;
  /** Draws the pictures; absent: bytes that stand for one, for a run that decodes nothing. */
  readonly draw?: typeof drawing;
  /** Whose cards are in the pictures that are rendered; absent: those are drawn too. */
  readonly company?: string;
}

const itemOf = (sheet: ToleranceSheet, id: string): Item => {
  const item = sheet.items.find((i) => i.id === id);
  if (item === undefined) throw new Error(`the sheet has no item ${id}`);
  return item;
};

async function picture(
  { script, book, company, photos, draw }: Entering,
  item: Item,
  [time, , caption, tag]: Entered,
): Promise<{ photo: string; bytes: number }> {
  const sketch = sketchOfItem[item.id] ?? sketchOfStep[item.step] ?? "site plan";
  const drawn = {
    title: item.title.en,
    ...(tag === undefined ? {} : { tag }),
    job: script.title,
    sketch,
    caption,
    wallClock: wallClock(time),
    offset: OFFSET,
    latitude: script.latitude,
    longitude: script.longitude,
  };
  const scene = script.measured?.find((one) => one.picture === item.id && one.tag === tag)?.scene;
  const jpeg = async (): Promise<Uint8Array | undefined> =>
    scene === undefined || company === undefined
      ? draw?.(drawn)
      : rendering(scenes[scene](), await printedCard(company, book.job, item.step), drawn);
  const bytes = new Uint8Array((draw && (await jpeg())) ?? new TextEncoder().encode(JSON.stringify(drawn)));
  const photo = sha256Hex(bytes);
  photos.set(photo, bytes);
  return { photo, bytes: bytes.length };
}

/** The fix that the phone took, degrees in 1e-7 and metres' thousandths. */
const fixOf = ({ latitude, longitude }: Entering["script"]) => ({
  latitude: Math.round(latitude * 1e7),
  longitude: Math.round(longitude * 1e7),
  accuracy: 6_000,
});

async function enterItem(entering: Entering, entered: Entered, setUp: string | undefined): Promise<Reference> {
  const { phone, book, sheet, script, fixes } = entering;
  const [time, id, value, tag] = entered;
  const item = itemOf(sheet, id);
  const about = { item: id, ...(tag === undefined ? {} : { tag }) };
  const made = moment(time);
  if (item.kind === "answer") return phone.enter(book, "answered", made, { what: { ...about, choice: value } });
  if (item.kind === "picture") {
    const photo = await picture(entering, item, entered);
    const what = { ...about, ...photo, type: "image/jpeg", taken: made, judged: "readable", ...(value === "" ? {} : { caption: value }) };
    return phone.enter(book, "picture-taken", made, { what, ...(fixes ? { where: fixOf(script) } : {}) });
  }
  const mark = script.marks?.[id];
  const side = script.sides?.[tag === undefined ? id : `${id} ${tag}`];
  const what = {
    ...about,
    typed: value,
    unit: item.unit?.inch ?? "in",
    ...(item.inSetUp && setUp !== undefined ? { setUp } : {}),
    ...(mark === undefined ? {} : { mark }),
    ...(side === undefined ? {} : { side }),
  };
  return phone.enter(book, "reading-taken", made, { what });
}

const isEntered = (line: Line): line is Entered => Array.isArray(line);

/** Enters the lines one after the other, as somebody did on the day. */
export async function enterAll(entering: Entering, lines: readonly Line[]): Promise<void> {
  const { phone, book, labels } = entering;
  const named = (label: string): Reference => {
    const reference = labels.get(label);
    if (reference === undefined) throw new Error(`nothing was entered under the label ${label}`);
    return reference;
  };
  let setUp: string | undefined;
  for (const line of lines) {
    if (isEntered(line)) {
      const reference = await enterItem(entering, line, setUp);
      const label = line[4];
      if (label !== undefined) labels.set(label, reference);
    } else if ("covers" in line) {
      await phone.cover(book, line.covers, moment(line.time));
    } else {
      const what = typeof line.what === "function" ? line.what(named) : line.what;
      const reference = await phone.enter(book, line.kind, moment(line.time), { what, ...(line.who ? { who: line.who } : {}) });
      if (line.kind === "set-up-made") setUp = reference.id;
      if (line.label !== undefined) labels.set(line.label, reference);
    }
  }
}
