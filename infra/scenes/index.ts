export {
  type Camera,
  distance,
  inPicture,
  type Lens,
  type Pixel,
  plus,
  project,
  rayThrough,
  type Standing,
  standing,
  times,
  type Vector,
} from "./camera.ts";
export { jpegOf } from "./jpeg.ts";
export { inchMarks, painted, type Strip, type Stroke, strip } from "./painted.ts";
export { type Light, type Rendered, render, type Sensor, type Window } from "./render.ts";
export { type Lying, letterSheet, type PrintedCode, type Sheet, sheetSurface, spotOnSheet } from "./sheet.ts";
export * from "./sites.ts";
export * from "./solids.ts";
export { BLACK, EARTH, GRASS, GREY, LINER, type Look, nothing, type Surface, WHITE, YELLOW } from "./surface.ts";
