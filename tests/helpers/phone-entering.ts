import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { ElementHandle } from "puppeteer";
import type { Item } from "#core/job/index.ts";
import { setUpPath, stepPath, takePath } from "#core/screens/field/paths.ts";
import { jobPath } from "#core/screens/parts/place.ts";
import { drawing } from "#infra/demo/drawings.ts";
import { type Entered, OFFSET, type Said, sketchOfItem, sketchOfStep, wallClock } from "#infra/demo/script.ts";
import { done, itemOf, type Playing, say, wordsOf } from "./phone-playing.ts";

/** Takes one item where the app asks for it: its page is reached by touch. */
export async function enterItem(playing: Playing, item: Item, line: Entered): Promise<void> {
  const { hand, job } = playing;
  const [, , value, tag] = line;
  await hand.go(takePath(job, item.id, tag), stepPath(job, item.step, tag), stepPath(job, item.step), jobPath(job));
  if (item.kind === "picture") return enterPicture(playing, item, line);
  if (item.kind === "reading") return enterReading(playing, item, value, tag);
  const from = await hand.here();
  await hand.press("main > .choices button", item.choices?.find(({ id }) => id === value)?.title.en ?? value, "itself");
  await done(playing, () => hand.left(from));
}

async function enterPicture(playing: Playing, item: Item, [time, , caption, tag]: Entered): Promise<void> {
  const { hand, script, folder } = playing;
  const drawn = await drawing({
    title: item.title.en,
    ...(tag === undefined ? {} : { tag }),
    job: script.title,
    sketch: sketchOfItem[item.id] ?? sketchOfStep[item.step] ?? "site plan",
    caption,
    wallClock: wallClock(time),
    offset: OFFSET,
    latitude: script.latitude,
    longitude: script.longitude,
  });
  const path = join(folder, `${item.id}-${tag ?? ""}.jpg`);
  await writeFile(path, drawn);
  const from = await hand.here();
  const shutter = await hand.find(".shutter-row .shutter input");
  hand.count("picture");
  await (shutter as ElementHandle<HTMLInputElement>).uploadFile(path);
  await hand.press(".shutter-row button.main, .chosen-picture > button", undefined, "picture");
  await done(playing, () => hand.left(from));
}

const fieldOfReading = "label.typed:has(+ p[role=alert]) input";

/** With the drawn tape where the value is read to the sixteenth, as it stands there otherwise. */
async function enterValue({ hand }: Playing, value: string): Promise<void> {
  const field = await hand.find(fieldOfReading);
  const [, inches, sixteenths] = /^(\d+) (\d+)\/16$/.exec(value) ?? [];
  const [whole, numbers, inch] = await hand.page.$$(".tape .strip");
  if (inches === undefined || whole === undefined || numbers === undefined || inch === undefined) return hand.type(field, value, "reading");
  const at = Number(inches);
  // a thumb is not finer than two inches on the whole tape
  const pulled = at + 2;
  await hand.touch(whole, "reading", pulled / 144);
  const first = Math.min(Math.max(0, pulled - 5), 144 - 10);
  await hand.touch(numbers, "reading", (at - first + 0.5) / 10);
  await hand.touch(inch, "reading", (14 + (Number(sixteenths) * (340 - 28)) / 16) / 340);
  const shows = await field.evaluate((one) => (one as HTMLInputElement).value);
  if (shows !== `${at} ${sixteenths}/16 in`) throw new Error(`the tape was touched at ${value} and says ${shows}`);
}

async function enterReading(playing: Playing, item: Item, value: string, tag: string | undefined): Promise<void> {
  const { hand, script } = playing;
  const mark = script.marks?.[item.id];
  if (mark !== undefined) {
    const known = await hand.shown("main .choices button", mark);
    if (known !== undefined) await hand.touch(known, "itself");
    else await hand.type(await hand.find("main .choices .typed input"), mark, "itself");
    const side = script.sides?.[tag === undefined ? item.id : `${item.id} ${tag}`];
    if (side !== undefined) await hand.press("main .choices button", say(`tie-${side}`), "itself");
  }
  const from = await hand.here();
  if (item.quantity === "instant") await hand.press("main button", say("moment-now"), "reading");
  else await enterValue(playing, value);
  await hand.press(".enter-reading", undefined, "reading");
  // within: the next thing comes by itself; in doubt: the page stays and says so
  await done(playing, () =>
    hand.page.waitForFunction(
      (path) => decodeURI(location.pathname) !== path || document.querySelector(".verdict-now + .choices") !== null,
      { timeout: 15_000 },
      from,
    ),
  );
}

/** The next place of a set-up, which the phone must be calling out by itself. */
export async function enterPoint(playing: Playing, item: Item, value: string): Promise<void> {
  const { hand } = playing;
  const called = await (await hand.find(".call-out")).evaluate((element) => element.textContent ?? "");
  if (!called.startsWith(item.title.en)) throw new Error(`the phone asks for ${called}, the line is for ${item.title.en}`);
  const count = await hand.page.$eval(".enter-reading", (one) => one.textContent);
  await enterValue(playing, value);
  await hand.press(".enter-reading", undefined, "reading");
  await done(playing, () =>
    hand.page.waitForFunction((before) => document.querySelector(".enter-reading")?.textContent !== before, { timeout: 15_000 }, count),
  );
}

/** A new standing of the instrument, for the set-up that an item is read in. */
export async function beginSetUp(playing: Playing, item: Item, said: Said): Promise<void> {
  const { hand, job, sheet } = playing;
  const { distance } = wordsOf<{ distance?: { typed: string } }>(said);
  const paths = sheet.checks
    .filter(({ step, items }) => step === item.step && items.length > 1 && items.every((id) => itemOf(playing, id).inSetUp === true))
    .map(({ id }) => setUpPath(job, id));
  const offered = async (): Promise<string | undefined> => {
    for (const path of paths) if ((await hand.here()) === path || (await hand.link(path)) !== undefined) return path;
    return undefined;
  };
  if ((await offered()) === undefined) await hand.go(stepPath(job, item.step), jobPath(job));
  const path = await offered();
  if (path === undefined) throw new Error(`no set-up is offered in ${item.step}`);
  await hand.go(path);
  await hand.find(".call-out, .typed input, .verdict-now");
  const anew = await hand.shown("main button", say("set-up-moved"));
  if (anew !== undefined) await hand.touch(anew, "itself");
  await hand.find("main button", say("set-up-begin"));
  const far = await hand.find("main .choices .typed input");
  if (distance !== undefined && (await far.evaluate((one) => (one as HTMLInputElement).value)) !== distance.typed)
    await hand.type(far, distance.typed, "itself");
  await hand.press("main button", say("set-up-begin"), "itself");
  await done(playing, () => hand.page.waitForSelector(".call-out"));
}
