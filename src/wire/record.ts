import * as z from "zod/mini";
import { count, hex64, id, instant } from "./primitives.ts";

export const edition = z.enum(["customer", "company"]);
export const newRecord = z.strictObject({ edition });
export type NewRecord = z.infer<typeof newRecord>;

export const recordMade = z.object({
  record: id,
  version: count,
  edition,
  pages: count,
  bytes: count,
  sha256: hex64,
  pdf: z.string(),
});
export type RecordMade = z.infer<typeof recordMade>;

export const records = z.object({
  records: z.array(z.extend(recordMade, { issued: instant, head: z.object({ number: count, hash: hex64 }) })),
});
export type RecordList = z.infer<typeof records>;
