import { type ComparedLength, factsOf, type Live, type PhotoComparison, photoComparisons, whatOf } from "../job/index.ts";
import { isRegion, type Region } from "../photo/index.ts";
import type { Context } from "./context.ts";
import type { MeasuredPhotoView, PhotoLineView, PictureView } from "./model.ts";
import { makePhotoLengthSayer } from "./say-photo-lengths.ts";

/** Own: where the picture that prints has other sides than the measured one by more than this share, it is turned or cut. */
const SAME_SIDES = 0.01;
const WHOLE = 1_000_000;
const PER_PIXEL = 1000;

/** Own, parts of the picture's longer side: half an end's tick, the letters, the line. */
const [TICK, LETTERS, LINE] = [1 / 60, 1 / 30, 1 / 350];
/** Width of a letter and height of its plate, parts of the letters' size. */
const [LETTER_WIDTH, PLATE_HEIGHT] = [0.55, 1.4];
/** Of a short line a tick's half is this share, so that the line between the two is still seen. */
const OF_SHORT = 0.35;

type Point = PhotoLineView["at"];
const tenth = (n: number): number => Math.round(n * 10) / 10;
const point = (x: number, y: number): Point => ({ x: tenth(x), y: tenth(y) });

interface Sides {
  readonly width: number;
  readonly height: number;
}

/** The line between two taps with a tick at each end, and beside it the plate with its length, inside the picture. */
function lineOf({ width, height }: Sides, from: Point, to: Point, text: string): PhotoLineView {
  const long = Math.max(width, height);
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const length = Math.sqrt(dx * dx + dy * dy);
  const [nx, ny] = [dy / length, -dx / length];
  const half = Math.min(TICK * long, Math.max(2 * LINE * long, OF_SHORT * length));
  const tick = (end: Point): readonly Point[] => [point(end.x + nx * half, end.y + ny * half), point(end.x - nx * half, end.y - ny * half)];
  const size = LETTERS * long;
  const plate: Sides = { width: ([...text].length * LETTER_WIDTH + 0.8) * size, height: PLATE_HEIGHT * size };
  // over the line, or to the right of one that stands
  const side = Math.abs(nx) > Math.abs(ny) ? Math.sign(nx) : -Math.sign(ny);
  const away = (Math.abs(nx) * plate.width + Math.abs(ny) * plate.height) / 2 + TICK * long;
  const inside = (middle: number, half: number, most: number): number => Math.min(Math.max(middle, half), most - half);
  const x = inside((from.x + to.x) / 2 + side * nx * away, plate.width / 2, width);
  const y = inside((from.y + to.y) / 2 + side * ny * away, plate.height / 2, height);
  return {
    strokes: [[point(from.x, from.y), point(to.x, to.y)], tick(from), tick(to)],
    thick: tenth(LINE * long),
    plate: { ...point(x - plate.width / 2, y - plate.height / 2), width: tenth(plate.width), height: tenth(plate.height) },
    at: point(x, y + 0.35 * size),
    size: tenth(size),
    text,
  };
}

/** Whether what is blurred in a photo lies over a spot; where nobody wrote down what was blurred, it may be anything. */
function isBlurredAt({ state }: Context, photo: string, { width, height }: Sides, spot: Point): boolean {
  const blurred = factsOf(state, "region-blurred").filter(({ what }) => what.photo === photo);
  const regions = blurred.flatMap(({ what }): readonly Region[] => (what.regions ?? []).filter(isRegion));
  const [x, y] = [(spot.x / width) * WHOLE, (spot.y / height) * WHOLE];
  return (
    blurred.some(({ what }) => what.regions === undefined) ||
    regions.some((part) => x >= part.x && y >= part.y && x <= part.x + part.width && y <= part.y + part.height)
  );
}

const factOf = ({ state }: Context, { entry }: PhotoComparison): Live | undefined => state.facts.find(({ id }) => id === entry);

/** Of the photo as it prints: the measured spots are none of its own where it has other sides. */
function isTheSame({ photos }: Context, photo: string, { width, height }: Sides): boolean {
  const printed = photos[photo];
  if (printed?.width === undefined || printed.height === undefined) return true;
  return Math.abs((printed.width * height) / (printed.height * width) - 1) <= SAME_SIDES;
}

function drawnIn(context: Context, compared: PhotoComparison, measured: ComparedLength): PhotoLineView | undefined {
  const fact = factOf(context, compared);
  if (fact === undefined) return undefined;
  const { photo, width, height, from, to } = whatOf(fact, "photo-measured");
  const ends = [from, to].map(([x, y]) => ({ x: x / PER_PIXEL, y: y / PER_PIXEL })) as [Point, Point];
  if (!isTheSame(context, photo, { width, height }) || ends.some((end) => isBlurredAt(context, photo, { width, height }, end)))
    return undefined;
  return lineOf({ width, height }, ...ends, sayerOf(context).length(measured));
}

const sayerOf = ({ language, settings }: Context) => makePhotoLengthSayer({ language, units: settings.units });

/** What a photo measured beside each reading, by the reading's entry. */
export const saidBeside = (context: Context): ReadonlyMap<string, string> =>
  new Map(
    photoComparisons(context.state, "all").flatMap((compared) =>
      compared.reading === undefined ? [] : [[compared.reading, sayerOf(context).comparison(compared)] as const],
    ),
  );

/** The comparisons of a step's readings, by the photo in which each was measured. */
export function measuredIn(context: Context, step: string): ReadonlyMap<string, readonly PhotoComparison[]> {
  const byPhoto = new Map<string, PhotoComparison[]>();
  for (const compared of photoComparisons(context.state, "all")) {
    if (context.sheet.items.find(({ id }) => id === compared.item)?.step !== step) continue;
    byPhoto.set(compared.photo, [...(byPhoto.get(compared.photo) ?? []), compared]);
  }
  return byPhoto;
}

/** The picture with the lines that were measured in it and what they say; without lines where it does not print. */
export function withMeasured(context: Context, view: PictureView, compared: readonly PhotoComparison[] | undefined): PictureView {
  const [first] = compared ?? [];
  const fact = first && factOf(context, first);
  if (compared === undefined || fact === undefined) return view;
  const { width, height } = whatOf(fact, "photo-measured");
  const lines = view.rendition === undefined ? [] : compared.flatMap((one) => (one.measured && drawnIn(context, one, one.measured)) ?? []);
  const measured: MeasuredPhotoView = {
    width,
    height,
    lines,
    says: compared.map((one) => `${titleOf(context, one)}. ${sayerOf(context).comparison(one)}`),
  };
  return { ...view, measured };
}

export const titleOf = ({ sayer }: Context, { item, tag }: PhotoComparison): string =>
  sayer.title({ item, ...(tag === undefined ? {} : { tag }) });
