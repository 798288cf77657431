import { Buffer } from "node:buffer";

/**
 * A large HEIC as phones store it: a grid of tiles (ISO/IEC 23008-12, 6.6.2.3), made by repeating the one coded picture of a
 * small file, so that no large file lies in the repository and no coder of HEVC is needed.
 */
export interface GridAsked {
  readonly columns: number;
  readonly rows: number;
  /** Turn by the container, in quarter turns anti-clockwise (`irot`). */
  readonly quarterTurns?: number;
  /** A `colr` box to put in place of the tile's. */
  readonly colour?: Uint8Array;
  /** Size that the header gives; of the tiles together where absent. */
  readonly told?: { readonly width: number; readonly height: number };
}

export function heicGrid(tile: Uint8Array, { columns, rows, quarterTurns = 0, colour, told }: GridAsked): Buffer {
  const file = Buffer.from(tile);
  const coded = child(file, "mdat");
  const properties = child(child(child(file, "meta").subarray(4), "iprp"), "ipco");
  const size = child(properties, "ispe");
  const [tileWidth, tileHeight] = [size.readUInt32BE(4), size.readUInt32BE(8)];
  const width = told?.width ?? tileWidth * columns;
  const height = told?.height ?? tileHeight * rows;
  const count = columns * rows;
  const items = Array.from({ length: count }, (_, n) => n + 2);

  const shared = [box("hvcC", child(properties, "hvcC")), box("ispe", size), full("ispe", u32(width), u32(height))];
  const turn = quarterTurns === 0 ? [] : [box("irot", Buffer.from([quarterTurns]))];
  const tint = colour ? [Buffer.from(colour)] : [];
  const ipco = box("ipco", ...shared, ...turn, ...tint);
  // Places in `ipco` count from 1; the highest bit says that a reader must know the property.
  const ofGrid = [3, ...turn.map(() => 4 | 0x80), ...tint.map(() => 4 + turn.length)];
  const told1 = Buffer.concat([u16(1), Buffer.from([ofGrid.length, ...ofGrid])]);
  const ofTiles = items.map((item) => Buffer.concat([u16(item), Buffer.from([2, 1 | 0x80, 2])]));
  const iprp = box("iprp", ipco, full("ipma", u32(count + 1), told1, ...ofTiles));

  const grid = Buffer.concat([Buffer.from([0, 0, rows - 1, columns - 1]), u16(width & 0xffff), u16(height & 0xffff)]);
  const infos = [info(1, "grid"), ...items.map((item) => info(item, "hvc1"))];
  const meta = (dataAt: number): Buffer =>
    full(
      "meta",
      full("hdlr", u32(0), Buffer.from("pict"), Buffer.alloc(13)),
      full("pitm", u16(1)),
      full(
        "iloc",
        Buffer.from([0x44, 0]),
        u16(count + 1),
        place(1, dataAt, grid.length),
        ...items.map((item, n) => place(item, dataAt + grid.length + n * coded.length, coded.length)),
      ),
      full("iinf", u16(count + 1), ...infos),
      full("iref", box("dimg", u16(1), u16(count), ...items.map(u16))),
      iprp,
    );
  const ftyp = box("ftyp", Buffer.from("heic\0\0\0\0mif1heic", "latin1"));
  const dataAt = ftyp.length + meta(0).length + 8;
  return Buffer.concat([ftyp, meta(dataAt), box("mdat", grid, ...items.map(() => coded))]);
}

/** The contents of the first box of that kind among those that follow one another in `boxes`. */
function child(boxes: Buffer, kind: string): Buffer {
  for (let at = 0; at + 8 <= boxes.length; ) {
    const size = boxes.readUInt32BE(at);
    if (boxes.toString("latin1", at + 4, at + 8) === kind) return boxes.subarray(at + 8, at + size);
    at += Math.max(size, 8);
  }
  throw new Error(`no ${kind} in the tile's file`);
}

const u16 = (n: number): Buffer => Buffer.from([(n >> 8) & 0xff, n & 0xff]);
const u32 = (n: number): Buffer => Buffer.concat([u16(n >>> 16), u16(n & 0xffff)]);

const box = (kind: string, ...parts: readonly Buffer[]): Buffer => {
  const body = Buffer.concat(parts);
  return Buffer.concat([u32(body.length + 8), Buffer.from(kind, "latin1"), body]);
};

/** A box with version and flags, both nought. */
const full = (kind: string, ...parts: readonly Buffer[]): Buffer => box(kind, u32(0), ...parts);

/** An item's place: id, data reference, one extent. */
const place = (item: number, at: number, length: number): Buffer => Buffer.concat([u16(item), u16(0), u16(1), u32(at), u32(length)]);

/** Version 2: id, no protection, kind, no name. */
const info = (item: number, kind: string): Buffer =>
  box("infe", Buffer.from([2, 0, 0, 0]), u16(item), u16(0), Buffer.from(kind, "latin1"), Buffer.from([0]));
