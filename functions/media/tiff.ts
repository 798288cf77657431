export interface Tiff {
  readonly file: Uint8Array<ArrayBuffer>;
  /** Where the pixels go, row by row from the top; a part of `file`. */
  readonly pixels: Uint8Array<ArrayBuffer>;
}

/**
 * An uncompressed TIFF 6.0 file with room for bare pixels and their colour profile, the plainest way to hand both to the
 * image library: pixels alone would lose the profile, and wide colours would print dull.
 */
export function tiffFor(width: number, height: number, samples: 3 | 4, profile: Uint8Array | undefined): Tiff {
  const length = width * height * samples;
  const SHORT = 3;
  const LONG = 4;
  const UNDEFINED = 7;
  const bits = 8;
  const entries: [tag: number, type: number, count: number, value: number][] = [
    [256, LONG, 1, width],
    [257, LONG, 1, height],
    [258, SHORT, samples, 0], // BitsPerSample, placed below
    [259, SHORT, 1, 1], // no compression
    [262, SHORT, 1, 2], // RGB
    [273, LONG, 1, 0], // StripOffsets, placed below
    [277, SHORT, 1, samples],
    [278, LONG, 1, height],
    [279, LONG, 1, length],
    [284, SHORT, 1, 1], // samples side by side
  ];
  if (samples === 4) entries.push([338, SHORT, 1, 2]); // the fourth is opacity, not multiplied in
  if (profile) entries.push([34675, UNDEFINED, profile.length, 0]); // placed below
  const ifd = 8;
  const bitsAt = ifd + 2 + entries.length * 12 + 4;
  const profileAt = bitsAt + samples * 2;
  const pixelsAt = (profileAt + (profile?.length ?? 0) + 1) & ~1;
  const places: Readonly<Record<number, number>> = { 258: bitsAt, 273: pixelsAt, 34675: profileAt };

  const file = new Uint8Array(pixelsAt + length);
  const view = new DataView(file.buffer);
  view.setUint32(0, 0x49492a00); // little-endian from here on
  view.setUint32(4, ifd, true);
  view.setUint16(ifd, entries.length, true);
  for (const [at, [tag, type, count, value]] of entries.entries()) {
    const entry = ifd + 2 + at * 12;
    view.setUint16(entry, tag, true);
    view.setUint16(entry + 2, type, true);
    view.setUint32(entry + 4, count, true);
    if (type === SHORT && count === 1) view.setUint16(entry + 8, value, true);
    else view.setUint32(entry + 8, places[tag] ?? value, true);
  }
  for (let sample = 0; sample < samples; sample += 1) view.setUint16(bitsAt + sample * 2, bits, true);
  if (profile) file.set(profile, profileAt);
  return { file, pixels: file.subarray(pixelsAt) };
}
