import { cardCodeNames, type Whats } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { readCodes } from "../card-read/index.ts";
import { type Pixel, project, type Sheet, spotOnSheet, type Vector } from "../scenes/index.ts";
import { type JobBook, type Phone, sha256Hex } from "./phone.ts";
import { PAPER, printedCard } from "./rendering.ts";
import { type Scene, scenes } from "./scenes.ts";
import { type MeasuredIn, moment } from "./script.ts";

type What = Whats["photo-measured"];
type Codes = What["codes"];
type Seen = What["from"];

/** Of a tap under a magnifier, pixels: what a photo is measured with. */
const TAP = 0.5;
/** What stands for a corner's doubt where no photo was rendered and the corners are those of the geometry. */
const BY_GEOMETRY = 0.1;
const thousandths = (x: number, y: number, u: number): Seen => [Math.round(1000 * x), Math.round(1000 * y), Math.ceil(1000 * u)];
const placeOf = (name: string): 0 | 1 | 2 | 3 => (cardCodeNames as readonly string[]).indexOf(name) as 0 | 1 | 2 | 3;

function seenAt({ camera }: Scene, spot: Vector): Pixel {
  const pixel = project(camera, spot);
  if (pixel === undefined) throw new Error("a spot of the scene is behind the camera");
  return pixel;
}

/** Where the geometry puts the codes' corners. */
const cornersOf = (scene: Scene, sheet: Sheet): Codes =>
  sheet.codes.map(({ name, x, y, side }) => {
    const seen = (a: number, b: number): Seen => {
      const [u, v] = seenAt(scene, spotOnSheet(sheet, scene.card, a, b));
      return thousandths(u, v, BY_GEOMETRY);
    };
    return { place: placeOf(name), corners: [seen(x, y), seen(x + side, y), seen(x + side, y + side), seen(x, y + side)] };
  });

/** The codes' corners as they are found in the photo. */
async function cornersIn(photo: Uint8Array, scene: Scene, sheet: Sheet): Promise<Codes> {
  const { width, height } = scene.camera;
  const { codes } = await readCodes(photo, sheet.codes, { x: 0, y: 0, width, height });
  if (codes.length < 4) throw new Error(`of a rendered card ${codes.length} codes were read`);
  return codes.map(({ name, corners: [a, b, c, d] }) => ({
    place: placeOf(name),
    corners: [thousandths(a.x, a.y, a.u), thousandths(b.x, b.y, b.u), thousandths(c.x, c.y, c.u), thousandths(d.x, d.y, d.u)],
  }));
}

export interface Measuring {
  readonly phone: Phone;
  readonly book: JobBook;
  /** Whose cards are in the photos. */
  readonly company: string;
  readonly photos: ReadonlyMap<string, Uint8Array>;
  /** Whether the photos are rendered; else the corners are those of the geometry. */
  readonly isDrawn: boolean;
}

const photoOf = ({ entries }: JobBook, { picture, tag }: MeasuredIn): string => {
  const taken = entries.findLast(({ kind, what }) => {
    const said = what as Partial<Record<"item" | "tag", string>> | undefined;
    return kind === "picture-taken" && said?.item === picture && said.tag === tag;
  });
  if (taken === undefined) throw new Error(`there is no picture ${picture} ${tag ?? ""}`);
  return (taken.what as { readonly photo: string }).photo;
};

/** Measures readings anew in their photos, as a phone does: corners of the card's codes as they are found, a tap at each end. */
export async function enterMeasured({ phone, book, company, photos, isDrawn }: Measuring, measured: readonly MeasuredIn[]): Promise<void> {
  for (const one of measured) {
    const scene = scenes[one.scene]();
    const [photo, sheet] = [photoOf(book, one), await printedCard(company, book.job, one.step)];
    const bytes = photos.get(photo);
    if (bytes === undefined || sha256Hex(bytes) !== photo) throw new Error(`the photo of ${one.item} is not on the phone any more`);
    const [from, to] = scene.ends.map((end) => thousandths(...seenAt(scene, end), TAP)) as [Seen, Seen];
    const { width, height } = scene.camera;
    const what: What = {
      item: one.item,
      ...(one.tag === undefined ? {} : { tag: one.tag }),
      ...{ photo, width, height, paper: PAPER },
      // the crew laid a tape beside the ruler of one of its cards
      ruler: { typed: "10 0/16", unit: "in" },
      codes: isDrawn ? await cornersIn(bytes, scene, sheet) : cornersOf(scene, sheet),
      ...{ from, to },
    };
    await phone.enter(book, "photo-measured", moment(one.time), { what: what as unknown as Json });
  }
}
