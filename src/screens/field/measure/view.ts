/** Pixels of the picture, or points of the screen; from the upper left corner, the first pixel's middle ½, ½. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** What of a picture is shown: the spot in the upper left corner, and how many of its pixels lie in one of the screen's points. */
export interface View {
  readonly left: number;
  readonly top: number;
  readonly scale: number;
}

/** One end of what is measured: pixels of the picture, and its standard uncertainty along each axis. */
export interface End extends Spot {
  readonly u: number;
}

/** Own: half a pixel, for whoever sets a mark under the enlarged view; `OWN_PHOTO_DOUBTS` says the same. */
export const SET_WITHIN = 0.5;
/** Pixels in one point of the screen where an end is set exactly. */
const NEAR_SCALE = 0.5;
/** How much larger the round view shows what lies about an end. */
export const ENLARGED = 4;
/** Of the round view, points of the screen. */
export const GLASS_RADIUS = 70;
/** Between the finger and the round view: half a thumb in a glove. */
const GLASS_AWAY = 34;
/** A finger takes a mark within so many points of the screen: half a target. */
export const TAKES_WITHIN = 36;

const between = (value: number, least: number, most: number): number => Math.min(Math.max(value, least), Math.max(least, most));

/** The largest size of the picture's own shape in a room. */
export function fitted({ width, height }: Size, room: Size): Size {
  const share = Math.min(room.width / width, room.height / height);
  return { width: Math.round(width * share), height: Math.round(height * share) };
}

export const wholeView = (picture: Size, stage: Size): View => ({
  left: 0,
  top: 0,
  scale: Math.max(picture.width / stage.width, picture.height / stage.height),
});

/** About a spot, as near as an end is set; moved so that no more than is needed lies outside the picture. */
export function nearView(picture: Size, stage: Size, { x, y }: Spot): View {
  const scale = Math.min(NEAR_SCALE, wholeView(picture, stage).scale / 2);
  const [width, height] = [stage.width * scale, stage.height * scale];
  return { left: between(x - width / 2, 0, picture.width - width), top: between(y - height / 2, 0, picture.height - height), scale };
}

export const inPicture = ({ left, top, scale }: View, { x, y }: Spot): Spot => ({ x: left + x * scale, y: top + y * scale });
export const onScreen = ({ left, top, scale }: View, { x, y }: Spot): Spot => ({ x: (x - left) / scale, y: (y - top) / scale });

export const inside = ({ width, height }: Size, { x, y }: Spot): Spot => ({ x: between(x, 0, width), y: between(y, 0, height) });

/** How well an end is set by hand in a view: to a point of the screen, and never better than half a pixel. */
export const setWithin = ({ scale }: View): number => Math.max(SET_WITHIN, scale);

/** Whether a spot lies within what is shown. */
export const shown = ({ width, height }: Size, { x, y }: Spot): boolean => x >= 0 && y >= 0 && x <= width && y <= height;

/** Which of the ends a finger takes: the nearest one within reach. */
export function takenBy(finger: Spot, ends: readonly (Spot | undefined)[]): number | undefined {
  const away = ends.map((end) => (end === undefined ? Number.POSITIVE_INFINITY : Math.hypot(end.x - finger.x, end.y - finger.y)));
  const nearest = Math.min(...away);
  return nearest <= TAKES_WITHIN ? away.indexOf(nearest) : undefined;
}

/**
 * Where the middle of the round view stands, points of the stage: over the finger, or beside it where there is no room over it;
 * always whole within the stage, as far as that is large enough.
 */
export function glassAt(finger: Spot, { width, height }: Size): Spot {
  const away = GLASS_RADIUS + GLASS_AWAY;
  const x = between(finger.x, GLASS_RADIUS, width - GLASS_RADIUS);
  if (finger.y - away >= GLASS_RADIUS) return { x, y: finger.y - away };
  const isRoomLeft = finger.x - away >= GLASS_RADIUS;
  const isRoomRight = finger.x + away <= width - GLASS_RADIUS;
  const y = between(finger.y, GLASS_RADIUS, height - GLASS_RADIUS);
  // the left hand sees what lies right of it, and the right hand what lies left
  if (isRoomLeft) return { x: finger.x - away, y };
  if (isRoomRight) return { x: finger.x + away, y };
  return { x: finger.x < width / 2 ? width - GLASS_RADIUS : GLASS_RADIUS, y };
}

const steps: Readonly<Record<string, Spot>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** By how many pixels a key moves an end: one, with the shift key ten. */
export function byKey(key: string, shift: boolean): Spot | undefined {
  const step = Object.hasOwn(steps, key) ? steps[key] : undefined;
  return step && (shift ? { x: 10 * step.x, y: 10 * step.y } : step);
}

/** Most and least that an edge is looked for off an end, pixels. */
const [LEAST_REACH, MOST_REACH] = [6, 60];

/** How far off an end its edge may lie: what a finger may have missed it by. */
export const reachOf = ({ u }: End): number => between(4 * u, LEAST_REACH, MOST_REACH);

/** The part of the picture in which an edge near an end is looked for, whole pixels. */
export function cropAbout(picture: Size, end: End): { readonly left: number; readonly top: number } & Size {
  // the search looks beyond its reach for slanted edges
  const half = reachOf(end) + 40;
  const [left, top] = [Math.max(0, Math.floor(end.x - half)), Math.max(0, Math.floor(end.y - half))];
  return {
    left,
    top,
    width: Math.max(1, Math.min(picture.width, Math.ceil(end.x + half)) - left),
    height: Math.max(1, Math.min(picture.height, Math.ceil(end.y + half)) - top),
  };
}
