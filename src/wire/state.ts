import * as z from "zod/mini";

export const health = z.object({ alive: z.literal(true) });

const part = z.object({ up: z.boolean(), why: z.optional(z.string()) });
export const ready = z.object({ ready: z.boolean(), parts: z.object({ database: part, store: part, media: part, print: part }) });
export type Ready = z.infer<typeof ready>;
