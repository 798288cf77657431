import { contributors } from "../../doubt/index.ts";
import { leaveCore, toInteger } from "../../tolerance/index.ts";
import { fixedPerSi } from "../../units/index.ts";
import type { FigureSource } from "../figures.ts";
import { type Expectation, type ExpectationId, expectationIds, expectationKinds } from "./expectation.ts";
import { statedBy } from "./stated.ts";
import type { DesignSwitches } from "./switches.ts";
import type { Instead } from "./vocabulary.ts";

import type { Figure } from "./worked.ts";
import { groundPart, linePart, powerPart, spillwayPart } from "./worked-line.ts";
import { basinPart, budgetPart, floatPart, stonePart } from "./worked-water.ts";

function leave(id: ExpectationId, figure: Figure): Expectation {
  const kind = expectationKinds[id];
  const assumes = figure.assumes.length === 0 ? {} : { assumes: figure.assumes };
  if (!figure.known) {
    const needs = figure.needs.length === 0 ? {} : { needs: figure.needs };
    return { id, kind, ...needs, ...assumes, ...(figure.refusal && { refusal: figure.refusal }) };
  }
  const { value, ...named } = figure.value;
  if (value === undefined) return { id, kind, ...named, ...assumes };
  const perSi = fixedPerSi(kind);
  const { value: whole, expanded } = leaveCore(value, perSi);
  const largest = contributors(value).map(({ source, u }) => ({ name: source, u: toInteger(u * perSi) }));
  return { id, kind, value: whole, doubt: expanded, contributors: largest, ...named, ...assumes };
}

/**
 * Every figure that a design leads to, in the order of `expectationIds`, each value ± U with its three largest contributors. What
 * is missing is named and the rest still computes. `instead` puts other figures in the place of the design's: what was measured.
 */
export function expectations(source: FigureSource, switches: DesignSwitches, instead: Instead = {}): readonly Expectation[] {
  const stated = statedBy(source, instead);
  const checkValve = switches.checkValve === true;
  const figures: Readonly<Record<ExpectationId, Figure>> = {
    ...basinPart(stated, switches),
    ...floatPart(stated, switches),
    ...stonePart(stated, switches),
    ...linePart(stated, checkValve),
    ...spillwayPart(stated, checkValve),
    ...budgetPart(stated, switches),
    ...powerPart(stated),
    ...groundPart(stated, switches),
  };
  return expectationIds.map((id) => leave(id, figures[id]));
}

/** One of them by its id. */
export const expectationOf = (id: ExpectationId, source: FigureSource, switches: DesignSwitches, instead: Instead = {}): Expectation => {
  const found = expectations(source, switches, instead).find((one) => one.id === id);
  if (found === undefined) throw new Error(`no expectation ${id}`);
  return found;
};
