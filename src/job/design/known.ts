import type { Outcome, Refusal } from "../../outcome/index.ts";
import type { FigureKey } from "./vocabulary.ts";

/** A result, or the figures that it waits for; both with the figures for which an own default stood in. */
export type Known<T> =
  | { readonly known: true; readonly value: T; readonly assumes: readonly FigureKey[] }
  | { readonly known: false; readonly needs: readonly FigureKey[]; readonly assumes: readonly FigureKey[]; readonly refusal?: Refusal };

const once = (keys: readonly FigureKey[]): readonly FigureKey[] => [...new Set(keys)];

export const known = <T>(value: T, assumes: readonly FigureKey[] = []): Known<T> => ({ known: true, value, assumes });
export const waiting = (...needs: readonly FigureKey[]): Known<never> => ({ known: false, needs, assumes: [] });
export const refusedFor = (refusal: Refusal): Known<never> => ({ known: false, needs: [], assumes: [], refusal });

export const fromOutcome = <T>(outcome: Outcome<T>): Known<T> => (outcome.ok ? known(outcome.value) : refusedFor(outcome.refusal));

type Together<T> = { readonly [K in keyof T]: T[K] extends Known<infer V> ? V : never };

/** All of them, or everything that any of them waits for. */
export function together<T extends Readonly<Record<string, Known<unknown>>>>(parts: T): Known<Together<T>> {
  const list = Object.entries(parts);
  const assumes = once(list.flatMap(([, part]) => part.assumes));
  const needs = once(list.flatMap(([, part]) => (part.known ? [] : part.needs)));
  const refusal = list.map(([, part]) => (part.known ? undefined : part.refusal)).find((one) => one !== undefined);
  if (list.some(([, part]) => !part.known)) return { known: false, needs, assumes, ...(refusal && { refusal }) };
  return known(Object.fromEntries(list.map(([name, part]) => [name, part.known ? part.value : undefined])) as Together<T>, assumes);
}

/** Goes on from what is known. */
export function andThen<T, R>(from: Known<T>, next: (value: T) => Known<R>): Known<R> {
  if (!from.known) return from;
  const then = next(from.value);
  return { ...then, assumes: once([...from.assumes, ...then.assumes]) };
}

export const work = <T, R>(from: Known<T>, next: (value: T) => Outcome<R>): Known<R> => andThen(from, (value) => fromOutcome(next(value)));
export const pick = <T, R>(from: Known<T>, next: (value: T) => R): Known<R> => andThen(from, (value) => known(next(value)));

const settled = (one: Known<unknown>): boolean => one.known || one.refusal !== undefined;

/** The first, or where its figures are missing the second; with neither, the first's are asked for. What cannot be read stands. */
export function orElse<T>(first: Known<T>, second: () => Known<T>): Known<T> {
  if (settled(first)) return first;
  const other = second();
  return settled(other) ? other : first;
}

/** A figure that may be stated and is otherwise worked out: what is missing for that is asked for. */
export const statedOr = <T>(stated: Known<T>, worked: () => Known<T>): Known<T> => (settled(stated) ? stated : worked());

/** Where the figure `key` is missing: an own default, named. */
export const orAssume = <T>(first: Known<T>, key: FigureKey, value: T): Known<T> => orElse(first, () => known(value, [key]));

/** The value where it is known; nothing else of it. */
export const ifKnown = <T>(from: Known<T>): T | undefined => (from.known ? from.value : undefined);
