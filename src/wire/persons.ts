import * as z from "zod/mini";
import type { HoldReason } from "../keeping/index.ts";
import { later } from "./later.ts";
import { count, day, id, instant, json, role, text } from "./primitives.ts";

/** Somebody asks what the company holds about him, or that it be removed. `person`: one who works or worked for the company. */
export const personAsking = later(() =>
  z.strictObject({
    /** Of the one who enters it, so that sent twice it is one request. */
    id,
    asks: z.enum(["data", "removal"]),
    /** Every way in which the name is written. */
    names: z.array(text(120)).check(z.minLength(1), z.maxLength(6)),
    contacts: z.optional(z.array(text(200)).check(z.maxLength(6))),
    person: z.optional(id),
    /** The day of asking. */
    day,
  }),
);
export type PersonAsking = z.infer<typeof personAsking>;
export const personAsked = later(() => z.object({ request: id, number: count }));
export type PersonAsked = z.infer<typeof personAsked>;

const because = later(() => z.enum(["warranty", "dispute"] as const satisfies readonly HoldReason[]));

/** A removal waits until the end of a day. Said again it takes the place of what was said before. */
export const personHeld = later(() => z.strictObject({ because, until: day, note: z.optional(text()) }));
export type PersonHeld = z.infer<typeof personHeld>;

/** Jobs that are not kept: everything in them goes, and not only what names the person. */
export const personRemoving = later(() => z.strictObject({ whole: z.optional(z.array(id).check(z.maxLength(200))) }));
export type PersonRemoving = z.infer<typeof personRemoving>;

const request = later(() => ({
  request: z.string(),
  asks: z.enum(["data", "removal"]),
  /** None once they have been removed. */
  names: z.array(z.string()),
  contacts: z.array(z.string()),
  person: z.optional(z.string()),
  day: z.string(),
  entered: instant,
  state: z.enum(["open", "held", "answered"]),
  held: z.optional(z.object({ because, until: z.string(), by: z.string(), at: instant })),
  answered: z.optional(z.object({ at: instant, by: z.string(), bodies: count, files: count, stays: count })),
}));
export const personRequest = later(() => z.object(request));
export type PersonRequest = z.infer<typeof personRequest>;
export const personRequests = later(() => z.object({ requests: z.array(personRequest) }));
export type PersonRequests = z.infer<typeof personRequests>;

/** As `Date` writes it. */
const iso = later(() => z.iso.datetime());
const dataEntry = later(() =>
  z.object({
    number: count,
    kind: z.string(),
    made: iso,
    received: z.optional(iso),
    what: z.optional(json),
    who: z.optional(json),
    where: z.optional(json),
  }),
);
/** Everything that names a person, to be handed over: moments as ISO 8601 in UTC, what was entered as it was entered. */
export const personData = later(() =>
  z.object({
    company: z.string(),
    taken: iso,
    asked: z.object({ names: z.array(z.string()), contacts: z.array(z.string()), day }),
    person: z.optional(z.object({ id, name: z.string(), role, came: iso })),
    jobs: z.array(z.object({ job: id, isCustomer: z.boolean(), names: z.array(dataEntry), entered: z.array(dataEntry) })),
    companyLedger: z.array(dataEntry),
    sites: z.array(z.catchall(z.object({ id }), json)),
    oldWarranties: z.array(json),
  }),
);

const where = later(() =>
  z.object({
    job: z.string(),
    title: z.string(),
    number: count,
    kind: z.string(),
    parts: z.array(z.enum(["what", "who", "where"])),
  }),
);

/** What was found, what would go and what would stay. */
export const personFound = later(() =>
  z.object({
    ...request,
    jobs: z.array(
      z.object({
        job: z.string(),
        title: z.string(),
        ownNumber: z.optional(z.string()),
        /** Entries that name the person. */
        entries: count,
        isTheirs: z.boolean(),
        isWhole: z.boolean(),
        /** The last day of its covers that still run. */
        coveredUntil: z.optional(z.string()),
        callbacks: count,
      }),
    ),
    /** Places outside the jobs that name the person. */
    company: z.object({ entries: count, sites: count, oldWarranties: count, isPerson: z.boolean() }),
    goes: z.object({ bodies: count, files: count }),
    stays: z.array(where),
    /** Records that left the company: they cannot be called back. */
    handedOut: z.array(
      z.object({
        job: z.string(),
        title: z.string(),
        version: count,
        issued: instant,
        releases: z.array(z.object({ to: z.string(), at: instant })),
      }),
    ),
    /** The day by which it is gone from every backup, if it is removed today. */
    backupsUntil: z.string(),
  }),
);
export type PersonFound = z.infer<typeof personFound>;

/** Days that a backup is kept: what has been removed is gone from all of them then. */
export const BACKUP_DAYS = 35;
