/** Noise between 0 and 1 from a place and a seed, without state: the same on every machine. */
function speck(x: number, y: number, seed: number): number {
  let n = (Math.imul(x, 374761393) + Math.imul(y, 668265263) + Math.imul(seed, 2246822519)) | 0;
  n = Math.imul(n ^ (n >>> 13), 1274126177);
  return ((n ^ (n >>> 16)) >>> 0) / 4294967296;
}

function patch(x: number, y: number, seed: number): number {
  const [x0, y0] = [Math.floor(x), Math.floor(y)];
  const [fx, fy] = [x - x0, y - y0];
  const [sx, sy] = [fx * fx * (3 - 2 * fx), fy * fy * (3 - 2 * fy)];
  const above = speck(x0, y0, seed) * (1 - sx) + speck(x0 + 1, y0, seed) * sx;
  const below = speck(x0, y0 + 1, seed) * (1 - sx) + speck(x0 + 1, y0 + 1, seed) * sx;
  return above * (1 - sy) + below * sy;
}

/** Uneven ground, between 0 and 1: patches of 60 mm with finer ones in them. Metres. */
export const earth = (x: number, y: number, seed: number): number =>
  0.5 * patch(x / 0.06, y / 0.06, seed) + 0.3 * patch(x / 0.017, y / 0.017, seed + 1) + 0.2 * patch(x / 0.004, y / 0.004, seed + 2);

/** Whether dirt lies on a spot: `share` of the surface is covered, in blobs of some 15 mm with a ragged rim. */
export const dirty = (x: number, y: number, seed: number, share: number): boolean =>
  share > 0 && 0.75 * patch(x / 0.03, y / 0.03, seed + 7) + 0.25 * patch(x / 0.006, y / 0.006, seed + 8) > 1 - 0.25 - share;
