import * as z from "zod/mini";
import { later } from "./later.ts";
import { count, hex64, id, instant, json } from "./primitives.ts";
import { problem } from "./problem.ts";

/** As many entries as one batch may hold. */
export const MOST_ENTRIES = 200;
/** Bytes of one entry's body and of a whole batch, as JSON text. */
export const LARGEST_BODY = 1_000_000;
export const LARGEST_BATCH = 4_000_000;

export const author = later(() => z.strictObject({ person: id, phone: id }));

/** A kind of fact by its form. One that is not known is kept. */
export const kind = later(() => z.string().check(z.regex(/^[a-z][a-z0-9-]{0,63}$/, "kind")));

const digests = later(() => z.strictObject({ what: z.optional(hex64), who: z.optional(hex64), where: z.optional(hex64) }));

/** What the phone makes and can sign for. */
export const sealed = later(() =>
  z.strictObject({
    format: z.literal(1),
    job: id,
    id,
    kind,
    author,
    run: count,
    made: instant,
    parts: digests,
  }),
);

const part = later(() => z.strictObject({ salt: hex64, content: json }));
export const body = later(() => z.strictObject({ what: z.optional(part), who: z.optional(part), where: z.optional(part) }));

/** One entry as a phone sends it: `digest` is what the phone believes the entry's digest to be. */
export const sentEntry = later(() => z.strictObject({ sealed, body, digest: z.optional(hex64) }));
export type SentEntry = z.infer<typeof sentEntry>;

/**
 * A batch. Its entries are judged one by one, each by the shape above, so that a bad one does not take the good ones
 * with it; `sent` is the phone's clock. Nothing here tells when it was received: that is the edge's own clock.
 */
export const batch = later(() =>
  z.strictObject({ sent: instant, entries: z.array(z.unknown()).check(z.minLength(1), z.maxLength(MOST_ENTRIES)) }),
);
export type Batch = z.infer<typeof batch>;

export const head = later(() => z.object({ number: count, hash: hex64 }));

export const taken = later(() => z.object({ id: z.string(), number: count, outcome: z.enum(["taken", "already there"]) }));
export const notTaken = later(() => z.object({ id: z.string(), refusal: problem }));
export const answer = later(() => z.union([taken, notTaken]));
export type EntryAnswer = z.infer<typeof answer>;

export const appended = later(() => z.object({ received: instant, head, answers: z.array(answer) }));
export type Appended = z.infer<typeof appended>;

export const envelope = later(() => z.object({ ...sealed.shape, number: count, sent: instant, received: instant, before: hex64 }));
const withheld = later(() => z.object({ withheld: z.string() }));
const keptPart = later(() => z.union([part, withheld]));

export const ledger = later(() =>
  z.object({
    format: z.literal(1),
    job: z.string(),
    head,
    entries: z.array(
      z.object({ envelope, body: z.object({ what: z.optional(keptPart), who: z.optional(keptPart), where: z.optional(keptPart) }) }),
    ),
    versions: z.array(z.object({ kind: z.string(), digest: hex64, content: json })),
  }),
);
