import { Worker } from "node:worker_threads";
import type { Sharp } from "sharp";
import { type CardCodeSeen, WHOLE_CARD } from "#core/photo/index.ts";
import { OneThread } from "#functions/shared/index.ts";
import type { CardsFound } from "./cards-worker.ts";
import { type Base, decode } from "./decode.ts";

/** Own: a picture made to hold very many patterns costs this, and is a picture without a card. */
const SEARCH_MS = 5_000;
/** Long edge of the second, closer look. */
const CLOSER_EDGE = 4096;

/** Looks for codes of cards in a thread of its own; undefined where it hung or died. */
export class CardReader {
  readonly #thread = new OneThread<Base, CardsFound | undefined>({
    start: () => new Worker(new URL("./cards-worker.ts", import.meta.url)),
    limit: SEARCH_MS,
    failed: () => undefined,
  });

  find({ data, width, height, channels }: Base): Promise<CardsFound | undefined> {
    return this.#thread.ask({ data, width, height, channels });
  }

  close(): Promise<void> {
    return this.#thread.close();
  }
}

/** A code of a card, in pixels of a picture that was `from` wide and is `to` wide; to the whole pixel. */
const scaled = ({ codes }: CardsFound, from: number, to: number): readonly CardCodeSeen[] => {
  const pixel = (one: number): number => Math.round((one * to) / from);
  return codes.map(({ text, corners: [a, b, c, d] }) => ({
    text,
    corners: [
      [pixel(a[0]), pixel(a[1])],
      [pixel(b[0]), pixel(b[1])],
      [pixel(c[0]), pixel(c[1])],
      [pixel(d[0]), pixel(d[1])],
    ],
  }));
};

export interface FirstLook {
  readonly found: CardsFound | undefined;
  /** Of what was looked at, pixels. */
  readonly width: number;
}

/**
 * Codes of cards in a picture whose full width is `width`: those of the first look where it saw a whole card, or nothing that looks
 * like a code; else those of a closer one, for which the picture is decoded again. Undefined where nobody could look.
 */
export async function cardsIn(
  { found, width: looked }: FirstLook,
  width: number,
  orientation: number,
  source: () => Sharp,
  reader: CardReader,
): Promise<readonly CardCodeSeen[] | undefined> {
  if (found === undefined) return undefined;
  const first = scaled(found, looked, width);
  const enough = found.codes.length >= WHOLE_CARD || (found.codes.length === 0 && !found.unread);
  if (enough || looked >= width) return first;
  const closer = await decode(source(), orientation, CLOSER_EDGE).catch(() => undefined);
  const again = closer && (await reader.find(closer));
  return again === undefined || again.codes.length < found.codes.length ? first : scaled(again, (closer as Base).width, width);
}
