import { createRequire } from "node:module";

export interface Mat {
  readonly data64F: Float64Array;
}
/** What is used of it; its own types need a package that is not installed. */
export interface OpenCv {
  readonly CV_64F: number;
  readonly Mat: new () => Mat;
  readonly matFromArray: (rows: number, columns: number, type: number, values: readonly number[]) => Mat;
  readonly findHomography: (from: Mat, to: Mat) => Mat;
  readonly solvePnP: (object: Mat, seen: Mat, camera: Mat, distortion: Mat, turn: Mat, shift: Mat) => boolean;
  readonly Rodrigues: (turn: Mat, matrix: Mat) => void;
}

/** A general-purpose library of computer vision, in WebAssembly: a second or two to load. */
export async function openCv(): Promise<OpenCv> {
  const before = (["uncaughtException", "unhandledRejection"] as const).map((event) => [event, process.listeners(event as never)] as const);
  const loaded = createRequire(import.meta.url)("@techstark/opencv-js") as OpenCv & PromiseLike<unknown>;
  if (!("Mat" in loaded)) await new Promise<void>((done) => Object.assign(loaded, { onRuntimeInitialized: done }));
  // it listens for errors of the whole process
  for (const [event, known] of before)
    for (const listener of process.listeners(event as never)) if (!known.includes(listener as never)) process.off(event, listener as never);
  // it looks like a promise that never ends, and an async function must not give one back
  const { CV_64F, Mat, matFromArray, findHomography, solvePnP, Rodrigues } = loaded;
  return { CV_64F, Mat, matFromArray, findHomography, solvePnP, Rodrigues };
}
