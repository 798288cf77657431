import { brotliDecompressSync } from "node:zlib";

const HEADER = 48;
const CMAP = 0;
const GLYF = 10;
const LOCA = 11;
const OWN_TAG = 63;

/** The code points that a WOFF2 file has a glyph for (W3C WOFF File Format 2.0, sections 4 and 5; OpenType `cmap` formats 4 and 12). */
export function signsOf(woff2: Uint8Array): ReadonlySet<number> {
  const bytes = Buffer.from(woff2.buffer, woff2.byteOffset, woff2.byteLength);
  if (bytes.toString("latin1", 0, 4) !== "wOF2") throw new Error("This font is no WOFF2 file.");
  const { table, from } = findCmap(bytes, bytes.readUInt16BE(12));
  const tables = brotliDecompressSync(bytes.subarray(from, from + bytes.readUInt32BE(20)));
  return readCmap(tables.subarray(table.at, table.at + table.length));
}

function findCmap(bytes: Buffer, tables: number): { table: { at: number; length: number }; from: number } {
  let at = HEADER;
  let start = 0;
  let found: { at: number; length: number } | undefined;
  const number = (): number => {
    let value = 0;
    for (let digits = 0; digits < 5; digits += 1) {
      const byte = bytes.readUInt8(at++);
      value = value * 128 + (byte & 0x7f);
      if (byte < 0x80) break;
    }
    return value;
  };
  for (let table = 0; table < tables; table += 1) {
    const flags = bytes.readUInt8(at++);
    const tag = flags & 0x3f;
    const version = flags >> 6;
    if (tag === OWN_TAG) at += 4;
    const length = number();
    // For glyf and loca version 3 means 'as it is', for all others version 0.
    const changed = tag === GLYF || tag === LOCA ? version !== 3 : version !== 0;
    const stored = changed ? number() : length;
    if (tag === CMAP) found = { at: start, length };
    start += stored;
  }
  if (!found) throw new Error("This font has no table of signs.");
  return { table: found, from: at };
}

function readCmap(cmap: Buffer): ReadonlySet<number> {
  const signs = new Set<number>();
  for (let record = 0; record < cmap.readUInt16BE(2); record += 1) {
    const platform = cmap.readUInt16BE(4 + record * 8);
    const table = cmap.subarray(cmap.readUInt32BE(8 + record * 8));
    if (platform !== 0 && platform !== 3) continue;
    if (table.readUInt16BE(0) === 4) readSegments(table, signs);
    if (table.readUInt16BE(0) === 12) readGroups(table, signs);
  }
  return signs;
}

/** Format 4: segments of the first 65,536 code points, with a glyph by difference or by an index into what follows. */
function readSegments(table: Buffer, signs: Set<number>): void {
  const twice = table.readUInt16BE(6);
  for (let segment = 0; segment < twice; segment += 2) {
    const end = table.readUInt16BE(14 + segment);
    const start = table.readUInt16BE(16 + twice + segment);
    const delta = table.readUInt16BE(16 + 2 * twice + segment);
    const offsetAt = 16 + 3 * twice + segment;
    const offset = table.readUInt16BE(offsetAt);
    for (let sign = start; sign <= end && sign < 0xffff; sign += 1) {
      const listed = offset === 0 ? sign : table.readUInt16BE(offsetAt + offset + 2 * (sign - start));
      if (listed !== 0 && (listed + delta) % 0x10000 !== 0) signs.add(sign);
    }
  }
}

/** Format 12: groups of consecutive code points with consecutive glyphs. */
function readGroups(table: Buffer, signs: Set<number>): void {
  for (let group = 0; group < table.readUInt32BE(12); group += 1) {
    const at = 16 + group * 12;
    const glyph = table.readUInt32BE(at + 8);
    for (let sign = table.readUInt32BE(at); sign <= table.readUInt32BE(at + 4); sign += 1) {
      if (glyph + sign - table.readUInt32BE(at) !== 0) signs.add(sign);
    }
  }
}
