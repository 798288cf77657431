import * as z from "zod/mini";
import { later } from "./later.ts";

export const health = later(() => z.object({ alive: z.literal(true) }));

const part = later(() => z.object({ up: z.boolean(), why: z.optional(z.string()) }));
export const ready = later(() =>
  z.object({ ready: z.boolean(), parts: z.object({ database: part, store: part, media: part, print: part }) }),
);
export type Ready = z.infer<typeof ready>;
