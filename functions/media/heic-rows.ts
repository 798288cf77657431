import type { HeicMemory } from "./heic-memory.ts";

/** Rows as stored, from the top: a container's turn may make columns of them. */
export interface StoredRows {
  readonly rows: number;
  readonly height: number;
}

/**
 * How many rows of a damaged HEIC can be decoded in full. Phones store tiles of 512 pixels side by side: they are decoded
 * one after the other until one fails. Nought where the picture is of one piece.
 */
export function readableHeicRows(heic: HeicMemory): StoredRows {
  const tiling = heic.tiling();
  if (!tiling) return { rows: 0, height: 0 };
  const { columns, rows, tileHeight, height } = tiling;
  let good = 0;
  while (good < rows && isWhole(heic, good, columns)) good += 1;
  return { rows: Math.min(good * tileHeight, height), height };
}

function isWhole(heic: HeicMemory, row: number, columns: number): boolean {
  for (let column = 0; column < columns; column += 1) if (!heic.tileDecodes(column, row)) return false;
  return true;
}
