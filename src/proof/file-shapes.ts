import { canonical, type Json } from "../ledger/index.ts";
import type { RecordModel } from "../record/index.ts";
import type { SealedFindings, SealedPages } from "./sealed-record.ts";

// Anybody can seal anything with a key of their own: what is read on must have at least the shape that reading it needs.

type Fields = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Fields => typeof value === "object" && value !== null && !Array.isArray(value);
const isListOf = (value: unknown, good: (item: unknown) => boolean): boolean => Array.isArray(value) && value.every(good);
const isText = (value: unknown): boolean => typeof value === "string";
const isTitled = (value: unknown): boolean => isObject(value) && isText(value.title);
/** Not nested without end, and nothing in it that has no canonical form. */
const isSound = (value: unknown): boolean => canonical(value as Json).ok;

const isFinding = (value: unknown): boolean => isTitled(value) && isObject(value) && isText(value.step) && isText(value.check);
const isStep = (value: unknown): boolean => isObject(value) && isListOf(value.readings, isTitled) && isListOf(value.pictures, isTitled);

export const isModel = (value: unknown): value is RecordModel =>
  isObject(value) &&
  isSound(value) &&
  isTitled({ title: isObject(value.title) ? value.title.job : undefined }) &&
  isObject(value.proof) &&
  isObject(value.company) &&
  isListOf(value.findings, isFinding) &&
  isListOf(value.steps, isStep) &&
  isListOf(value.paperPictures, isTitled) &&
  isListOf(value.others, isObject);

export const isSealedFindings = (value: unknown): value is SealedFindings =>
  isObject(value) &&
  isSound(value) &&
  isListOf(value.findings, isObject) &&
  isListOf(value.clearances, isObject) &&
  isObject(value.withheld) &&
  isListOf(value.withheld.findings, Number.isSafeInteger) &&
  isListOf(value.withheld.clearances, Number.isSafeInteger);

export const isSealedPages = (value: unknown): value is SealedPages => isObject(value) && isListOf(value.pages, isText);
