import * as z from "zod/mini";
import type { Json } from "../ledger/index.ts";
import { later } from "./later.ts";

/** An id: random, made by a phone or the edge. Fits into a path as it stands. */
export const id = later(() => z.string().check(z.regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,63}$/, "id")));

/** A digest, hash or salt: 32 bytes as 64 lower-case hex digits. */
export const hex64 = later(() => z.string().check(z.regex(/^[0-9a-f]{64}$/, "hex64")));

/** 9999-12-31T23:59:59.999Z. */
export const LAST_INSTANT_MS = 253_402_300_799_999;

/** Milliseconds since 1970 UTC, up to the end of the year 9999. A clock that is years off is kept; one without sense is not. */
export const instant = later(() => z.int().check(z.gte(0), z.lte(LAST_INSTANT_MS)));

/** A day of the calendar, 'YYYY-MM-DD', that exists. */
export const day = later(() => z.iso.date());

export const count = later(() => z.int().check(z.gte(0)));

/** Text as somebody typed it, never empty. */
export const text = (longest = 2000) => z.string().check(z.minLength(1), z.maxLength(longest));

/** Any JSON value, as it comes out of a parser; its own reader judges it. Not looked into: it may be deep without end. */
export const json = later(() => z.custom<Json>((value) => value !== undefined));

export const language = later(() => z.enum(["en", "es"]));
export const units = later(() => z.enum(["inch", "metric"]));
export const role = later(() => z.enum(["crew", "office", "company owner"]));

/** A zone of the IANA time zone data base by its form; whether it exists is for the reader to know. */
export const zone = later(() => z.string().check(z.regex(/^[A-Za-z][A-Za-z0-9_+-]*(\/[A-Za-z0-9_+-]+){0,2}$/, "zone"), z.maxLength(64)));

export type Language = z.infer<typeof language>;
export type Units = z.infer<typeof units>;
export type PersonRole = z.infer<typeof role>;
