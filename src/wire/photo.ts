import * as z from "zod/mini";
import { count, hex64, json } from "./primitives.ts";

/** Bytes of the largest photo. */
export const LARGEST_PHOTO = 25 * 1024 * 1024;

export const photoStored = z.object({ sha256: hex64, bytes: count, type: z.string() });
export type PhotoStored = z.infer<typeof photoStored>;

/** stored: the original is safe, nobody has read it yet; read: facts and renditions are there; unreadable: it could not be decoded. */
export const photoState = z.object({
  sha256: hex64,
  bytes: count,
  type: z.string(),
  state: z.enum(["stored", "read", "unreadable"]),
  facts: z.optional(json),
  /** The machine gave up for now: how often it tried. The original is safe all the same. */
  givenUp: z.optional(count),
});
export type PhotoState = z.infer<typeof photoState>;
