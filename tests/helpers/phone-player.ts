import type { Item } from "#core/job/index.ts";
import { type Entered, type Line, moment, type Said } from "#infra/demo/script.ts";
import { setClock } from "#infra/screens/clock.ts";
import { beginSetUp, enterItem, enterPoint } from "./phone-entering.ts";
import type { Taps } from "./phone-hand.ts";
import { itemOf, type Playing } from "./phone-playing.ts";
import { announce, cover, goAhead, mend, nameTag, rework, sayNotTaken } from "./phone-saying.ts";

/** What one line of a script took on the screen. */
export interface Played {
  readonly line: Line;
  readonly kind: string;
  readonly item?: Item;
  readonly taps: Taps;
}

/** What the crew's phone has a page for, besides items, set-ups and coverings. */
const saying: Readonly<Record<string, (playing: Playing, said: Said) => Promise<void>>> = {
  "tag-named": nameTag,
  reworked: rework,
  "does-not-apply": sayNotTaken,
  "could-not-be-taken": sayNotTaken,
  "go-ahead": goAhead,
};

const isEntered = (line: Line): line is Entered => Array.isArray(line);

const minus = (a: Taps, b: Taps): Taps => ({
  reading: a.reading - b.reading,
  picture: a.picture - b.picture,
  itself: a.itself - b.itself,
  typed: a.typed - b.typed,
});

/** Plays the lines of a demo script on the crew's phone as somebody would who has only its screen. */
export class PhonePlayer {
  readonly #playing: Playing;
  readonly played: Played[] = [];
  /** Lines that the phone has no page for: they are for the office's desk. */
  readonly desk: Said[] = [];
  readonly #labelled = new Map<string, Entered>();
  #setUp: Said | undefined;

  constructor(playing: Playing) {
    this.#playing = playing;
  }

  /** At the time of each line, by the phone's own clock. `announced`: coverings that the office is told of before. */
  async play(lines: readonly Line[], announced: readonly string[] = []): Promise<void> {
    const { hand } = this.#playing;
    for (const line of lines) {
      await setClock(hand.page, moment(isEntered(line) ? line[0] : line.time));
      if ("covers" in line && announced.includes(line.covers)) await announce(this.#playing, line.covers);
      const before = hand.taps;
      const kind = await this.#line(line);
      if (kind === undefined) continue;
      const item = isEntered(line) ? itemOf(this.#playing, line[1]) : undefined;
      this.played.push({ line, kind, ...(item === undefined ? {} : { item }), taps: minus(hand.taps, before) });
    }
  }

  /** The kind of what was played; undefined for what is left to the desk. */
  async #line(line: Line): Promise<string | undefined> {
    if (isEntered(line)) return this.#entered(line);
    if ("covers" in line) {
      await cover(this.#playing, line.covers);
      return "covered";
    }
    // begun with its first point, which says in which step
    if (line.kind === "set-up-made") this.#setUp = line;
    else if (line.kind === "corrected") await this.#mend(line);
    else if (Object.hasOwn(saying, line.kind)) await saying[line.kind]?.(this.#playing, line);
    else {
      this.desk.push(line);
      return undefined;
    }
    return line.kind;
  }

  async #entered(line: Entered): Promise<string> {
    const [, id, value, , label] = line;
    const item = itemOf(this.#playing, id);
    if (label !== undefined) this.#labelled.set(label, line);
    if (item.inSetUp !== true) await enterItem(this.#playing, item, line);
    else {
      if (this.#setUp !== undefined) await beginSetUp(this.#playing, item, this.#setUp);
      this.#setUp = undefined;
      await enterPoint(this.#playing, item, value);
    }
    return item.kind;
  }

  async #mend({ what }: Said): Promise<void> {
    let line: Entered | undefined;
    const words =
      typeof what !== "function"
        ? what
        : what((label) => {
            line = this.#labelled.get(label);
            return { id: "", digest: "" };
          });
    if (line === undefined) throw new Error("nothing was entered under that label");
    const { reason, replace } = words as { reason: string; replace: { typed: string } };
    await mend(this.#playing, line, { reason, typed: replace.typed });
  }
}
