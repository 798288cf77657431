import sharp from "sharp";
import type { Served } from "./origin.ts";
import { plainJpeg } from "./plain-jpeg.ts";
import { inTurns } from "./turns.ts";

// Beside a browser: each picture on one thread, and none kept.
sharp.cache(false);
sharp.concurrency(1);

/** Pictures that are made smaller at the same time. Own. */
const AT_ONCE = 2;

/** Bytes that all pictures of a record may come to, so that it stays under ten million with its ledger inside. Own. */
export const MOST_PICTURE_BYTES = 8_600_000;

/** Long edge in pixels and JPEG quality, tried in turn. A picture is 84 mm wide on paper: 1000 pixels are 300 to the inch. Own. */
const sizes = [
  { edge: 1000, quality: 80 },
  { edge: 850, quality: 74 },
  { edge: 700, quality: 66 },
  { edge: 560, quality: 58 },
] as const;

/** Of all of them together. */
export const bytesOf = (files: ReadonlyMap<string, Served>): number =>
  [...files.values()].reduce((sum, { bytes }) => sum + bytes.length, 0);

/**
 * The picture smaller; as it is where that would not make it smaller, where it was made so small before, or where it does not decode:
 * the browser then says so.
 */
async function smaller(served: Served, { edge, quality }: (typeof sizes)[number]): Promise<Served> {
  const pixels = served.whole && plainJpeg(served.bytes);
  if (pixels && Math.max(pixels.width, pixels.height) <= edge) return served;
  try {
    const made = await sharp(served.bytes)
      .resize({ width: edge, height: edge, fit: "inside", withoutEnlargement: true })
      .jpeg({ quality })
      .toBuffer();
    return made.length < served.bytes.length ? { type: served.type, bytes: new Uint8Array(made), whole: true } : served;
  } catch {
    return served;
  }
}

/**
 * Pictures of a record as they come, made to fit: as they are where all of them do; otherwise all of them in the largest of the sizes
 * in which they do, the smallest where none does.
 */
export class Fitting {
  readonly #most: number;
  readonly #come = new Map<string, Served>();
  readonly #begun = new Map<string, Promise<Served>>();
  readonly #turn = inTurns(AT_ONCE);
  #bytes = 0;

  constructor(most = MOST_PICTURE_BYTES) {
    this.#most = most;
  }

  readonly take = (address: string, served: Served): void => {
    this.#come.set(address, served);
    this.#bytes += served.bytes.length;
    if (this.#bytes <= this.#most) return;
    // whatever else comes, none can stay as it is
    for (const [one, picture] of this.#come) void this.#largest(one, picture);
  };

  #largest(address: string, served: Served): Promise<Served> {
    const begun = this.#begun.get(address) ?? this.#turn(() => smaller(served, sizes[0]));
    this.#begun.set(address, begun);
    return begun;
  }

  /** All that have come. */
  async all(): Promise<ReadonlyMap<string, Served>> {
    let fitting: ReadonlyMap<string, Served> = this.#come;
    for (const size of sizes) {
      if (bytesOf(fitting) <= this.#most) return fitting;
      const made = [...this.#come].map(async ([address, served]) => {
        const begun = size === sizes[0] ? this.#largest(address, served) : this.#turn(() => smaller(served, size));
        return [address, await begun] as const;
      });
      fitting = new Map(await Promise.all(made));
    }
    return fitting;
  }
}
