import type { ElementHandle } from "puppeteer";
import type { About } from "#core/job/index.ts";
import { coverPath, movePath, namesPath, noCovering, stepPath, takePath, wayPath, waysPath } from "#core/screens/field/paths.ts";
import { jobPath } from "#core/screens/parts/place.ts";
import type { Entered, Said } from "#infra/demo/script.ts";
import { done, itemOf, type Playing, say, wordsOf } from "./phone-playing.ts";

/** Types into the field that is called so. */
async function fill({ hand }: Playing, label: string, text: string): Promise<void> {
  const found = await hand.page.evaluateHandle(
    (words) =>
      [...document.querySelectorAll("main label.typed")]
        .find((one) => one.textContent?.trim().startsWith(words))
        ?.querySelector("input, textarea") ?? null,
    label,
  );
  const field = found.asElement() as ElementHandle<Element> | null;
  if (field === null) throw new Error(`no field is called ${label}`);
  await hand.type(field, text, "itself");
}

async function enterIt(playing: Playing): Promise<void> {
  const { hand } = playing;
  const from = await hand.here();
  await hand.press("main .target.main", say("way-enter"), "itself");
  await done(playing, () => hand.left(from));
}

export async function nameTag(playing: Playing, said: Said): Promise<void> {
  const { hand, job, sheet } = playing;
  const { set, tag, hiddenBy, description } = wordsOf<{ set: string; tag: string; hiddenBy: string; description: string }>(said);
  const step = sheet.items.find(({ tags }) => tags === set)?.step ?? "";
  await hand.go(namesPath(job, set, step), stepPath(job, step), jobPath(job));
  const name = await hand.find("main .typed input");
  if ((await name.evaluate((one) => (one as HTMLInputElement).value)) !== tag) await hand.type(name, tag, "itself");
  await fill(playing, say("name-what"), description);
  const coverings = sheet.tagSets.find(({ id }) => id === set)?.coverings ?? [];
  if (coverings.length > 1 && coverings[0] !== hiddenBy)
    await hand.press("main .choices button", sheet.coverings.find(({ id }) => id === hiddenBy)?.title.en, "itself");
  await enterIt(playing);
}

export async function rework(playing: Playing, said: Said): Promise<void> {
  const { hand, job, sheet } = playing;
  const { about, done: what, minutes } = wordsOf<{ about: About; done: string; minutes: number }>(said);
  const covering = sheet.checks.find(({ id }) => id === about.check)?.holds ?? "";
  const [way, ways] = [wayPath(job, "rework it", about, covering), waysPath(job, covering, about)];
  await hand.go(way, ways, coverPath(job, covering), jobPath(job));
  await fill(playing, say("way-what-reworked"), what);
  await fill(playing, say("way-minutes"), String(minutes));
  await enterIt(playing);
}

/** Does not apply, or could not be taken: said from the page of the thing itself. */
export async function sayNotTaken(playing: Playing, said: Said): Promise<void> {
  const { hand, job } = playing;
  const { about, reason } = wordsOf<{ about: About; reason: string }>(said);
  const item = itemOf(playing, about.item ?? "");
  const doesNotApply = said.kind === "does-not-apply";
  await hand.go(
    wayPath(job, doesNotApply ? "does not apply" : "could not be taken", about, noCovering),
    waysPath(job, noCovering, about),
    takePath(job, item.id, about.tag),
    stepPath(job, item.step, about.tag),
    stepPath(job, item.step),
    jobPath(job),
  );
  await fill(playing, say(doesNotApply ? "way-why-not-apply" : "way-why-not-taken"), reason);
  await enterIt(playing);
}

export async function goAhead(playing: Playing, said: Said): Promise<void> {
  const { hand, job } = playing;
  const { covering, reason, about } = wordsOf<{ covering: string; reason: string; about: readonly [About] }>(said);
  const way = wayPath(job, "go-ahead by telephone", about[0], covering);
  await hand.go(way, waysPath(job, covering, about[0]), coverPath(job, covering), jobPath(job));
  await fill(playing, say("way-whose-word"), String(said.who?.name ?? ""));
  await fill(playing, say("way-why-go-ahead"), reason);
  await enterIt(playing);
}

/** A reading that was typed otherwise than it was read; `line`: what was entered first. */
export async function mend(playing: Playing, [, id, , tag]: Entered, { reason, typed }: { reason: string; typed: string }): Promise<void> {
  const { hand, job } = playing;
  const { step } = itemOf(playing, id);
  await hand.go(takePath(job, id, tag), stepPath(job, step, tag), stepPath(job, step), jobPath(job));
  const from = await hand.here();
  await hand.press(`.readings-so-far a[href^="${movePath(job, "")}"]`, undefined, "itself");
  await hand.left(from);
  await fill(playing, say("mend-as-read"), typed);
  await fill(playing, say("mend-why"), reason);
  await enterIt(playing);
}

/** Longer than the button asks for. */
const HELD_MS = 1_500;

export async function cover(playing: Playing, covering: string): Promise<void> {
  const { hand, job } = playing;
  const path = coverPath(job, covering);
  await hand.go(path, jobPath(job));
  await hand.hold(await hand.find(".hold"), HELD_MS);
  await done(playing, () => hand.left(path));
}

/** Tells the office when something will be covered: the first of the times that stand there. */
export async function announce({ hand, job }: Playing, covering: string): Promise<void> {
  await hand.go(coverPath(job, covering), jobPath(job));
  await hand.press(".row-of-four button", undefined, "itself");
  await hand.page.waitForFunction(() => document.querySelector(".row-of-four + p")?.textContent !== "");
}
