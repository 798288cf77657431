import { combine, faultIn, product, refused, subtract, type Uncertain } from "../doubt/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import { ofFactor, waterFactors } from "./factors.ts";

/**
 * Weight of stone on a basin's lid.
 *
 *   m_l = ρ_l A d          m_b = k ρ_r x y z
 *
 *   m_l, m_b  layer and boulder, kg
 *   ρ_l       loose stone as it lies, about 100 lb/ft³ (1602 kg/m³ ± 15 %)
 *   A, d      area and depth of the layer, m², m (`area`, `depth`)
 *   ρ_r, k    rock 165 lb/ft³, share of the block that a boulder fills 0.6, together ± 25 %
 *   x, y, z   its three sizes, m (`length`, `width`, `height`)
 *
 * Source: own, from memory. Expected accuracy: 15 % for a layer, 25 % for a boulder; wet stone is up to a fifth heavier.
 */
export interface StoneLayer {
  readonly depth: Uncertain;
  readonly area: Uncertain;
}
export interface Boulder {
  readonly length: Uncertain;
  readonly width: Uncertain;
  readonly height: Uncertain;
}

/** Weight of one layer, kg. */
export function layerWeight({ depth, area }: StoneLayer): Outcome<Uncertain> {
  const fault = faultIn("layer", { depth: [depth, "not negative"], area: [area, "positive"] });
  return fault ? refused(fault) : ok(product(ofFactor(waterFactors.looseStone), product(depth, area)));
}

/** Weight of one boulder, kg; the same figure serves the caution before lifting. */
export function boulderWeight({ length, width, height }: Boulder): Outcome<Uncertain> {
  const fault = faultIn("boulder", { length: [length, "positive"], width: [width, "positive"], height: [height, "positive"] });
  if (fault) return refused(fault);
  const rock = product(ofFactor(waterFactors.solidStone), ofFactor(waterFactors.boulderShape));
  return ok(product(rock, product(length, product(width, height))));
}

export interface StoneOnLid {
  readonly layers: readonly StoneLayer[];
  readonly boulders: readonly Boulder[];
}

export interface StoneWeight {
  readonly mass: Uncertain;
  /** A boulder stands on a few points of the lid: a load spread over all of it says nothing about that. */
  readonly heaviestBoulder?: Uncertain;
}

/** All the stone on the lid, kg. Nothing on it weighs nothing. */
export function stoneWeight({ layers, boulders }: StoneOnLid): Outcome<StoneWeight> {
  const masses: Uncertain[] = [];
  let heaviestBoulder: Uncertain | undefined;
  for (const layer of layers) {
    const mass = layerWeight(layer);
    if (!mass.ok) return mass;
    masses.push(mass.value);
  }
  for (const boulder of boulders) {
    const mass = boulderWeight(boulder);
    if (!mass.ok) return mass;
    masses.push(mass.value);
    if (heaviestBoulder === undefined || mass.value.value > heaviestBoulder.value) heaviestBoulder = mass.value;
  }
  const mass = combine(masses.map((of) => ({ times: 1, of })));
  return ok(heaviestBoulder === undefined ? { mass } : { mass, heaviestBoulder });
}

/** The load on the lid that a kit card states: in all (kg), or per area (kg/m²) with the lid's area (m²). */
export type StatedLoad =
  | { readonly kind: "in all"; readonly mass: Uncertain }
  | { readonly kind: "per area"; readonly massPerArea: Uncertain; readonly lidArea: Uncertain };

export type StoneAgainstLoad =
  | ({ readonly answer: "ask the maker" } & StoneWeight)
  | ({ readonly answer: "compared"; readonly load: Uncertain; readonly room: Uncertain } & StoneWeight);

function statedMass(load: StatedLoad): Outcome<Uncertain> {
  const fault =
    load.kind === "in all"
      ? faultIn("load", { mass: [load.mass, "positive"] })
      : faultIn("load", { massPerArea: [load.massPerArea, "positive"], lidArea: [load.lidArea, "positive"] });
  if (fault) return refused(fault);
  return ok(load.kind === "in all" ? load.mass : product(load.massPerArea, load.lidArea));
}

/** The stone against the load its kit card states: room = load - stone, kg. No load stated: ask the maker; none is ever assumed. */
export function stoneAgainstLoad(stone: StoneOnLid, stated?: StatedLoad): Outcome<StoneAgainstLoad> {
  const weight = stoneWeight(stone);
  if (!weight.ok) return weight;
  if (stated === undefined) return ok({ answer: "ask the maker", ...weight.value });
  const load = statedMass(stated);
  if (!load.ok) return load;
  return ok({ answer: "compared", load: load.value, room: subtract(load.value, weight.value.mass), ...weight.value });
}
