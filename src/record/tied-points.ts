import { type NonEmpty, readingUncertainty, repeated, type Uncertain } from "../doubt/index.ts";
import type { Item, Live } from "../job/index.ts";
import { readQuantity } from "../reading/index.ts";
import { fixedPerSi } from "../units/index.ts";
import type { Context } from "./context.ts";
import { firstTyped } from "./corrections-view.ts";
import { grouped } from "./grouped.ts";
import { sayArithmetic } from "./say-arithmetic.ts";

/** One distance to a mark as it counts. */
export interface TieRead {
  readonly mark: string;
  /** As typed; several readings of one distance one after the other. */
  readonly typed: string;
  readonly distance: Uncertain;
}

/** Something that was tied to marks. */
export interface Tied {
  readonly name: string;
  /** Other names by which a tie may call it, where it is a mark itself. */
  readonly alsoCalled: readonly string[];
  readonly ties: readonly TieRead[];
  /** Left or right for someone at the mark of its first tie who looks to that of its second. */
  readonly side?: "left" | "right";
}

/** Ties of one point differ in the number at the end of their items' names, and in nothing else. */
const pointOf = (item: Item, tag: string | undefined): string => `${item.id.replace(/-\d+$/, "")} ${tag ?? ""}`;

function distanceOf({ sheet }: Context, item: Item, { id, what }: Live): Uncertain | undefined {
  const read = readQuantity(String(what.typed), { kind: "length", unit: String(what.unit) });
  if (!read.ok) return undefined;
  const perMetre = fixedPerSi("length");
  const placing = sheet.placings.find((p) => p.id === what.placing) ?? sheet.placings.find((p) => p.id === item.placing);
  const instrument = sheet.instruments.find((i) => i.id === what.instrument) ?? sheet.instruments.find((i) => i.id === item.instrument);
  const doubtful = readingUncertainty({
    reading: id,
    value: read.value.value / perMetre,
    resolution: read.value.resolution / perMetre,
    placingHalfWidth: (placing?.halfWidth ?? 0) / perMetre,
    ...(instrument?.permittedError === undefined ? {} : { instrument: { permittedErrorHalfWidth: instrument.permittedError / perMetre } }),
  });
  return doubtful.ok ? doubtful.value : undefined;
}

interface Entered {
  readonly item: Item;
  readonly fact: Live;
  readonly mark: string;
  readonly distance: Uncertain;
}

function enteredTies(context: Context): readonly Entered[] {
  const { sheet, state, beforeRework } = context;
  return sheet.items
    .filter((item) => item.fromMark === true)
    .flatMap((item) =>
      (state.byItem.get(item.id) ?? []).flatMap((fact) => {
        const mark = typeof fact.what.mark === "string" ? fact.what.mark.trim() : "";
        const distance =
          fact.kind === "reading-taken" && mark !== "" && !beforeRework.has(fact.id) ? distanceOf(context, item, fact) : undefined;
        return distance === undefined ? [] : [{ item, fact, mark, distance }];
      }),
    );
}

function namesOf({ sheet, state, sayer, language }: Context, { item, fact }: Entered): Pick<Tied, "name" | "alsoCalled"> {
  const tag = state.tags.find((t) => t.set === item.tags && t.tag === fact.what.tag);
  if (tag === undefined) return { name: sayer.words(item.title), alsoCalled: [] };
  const set = sayer.words(sheet.tagSets.find((s) => s.id === tag.set)?.title);
  const say = sayArithmetic(language);
  if (tag.description === undefined) return { name: say("plan.tag-bare", { set, tag: tag.tag }), alsoCalled: [] };
  const { description } = tag;
  return { name: say("plan.tag", { set, tag: tag.tag, description }), alsoCalled: [description, `${tag.tag}, ${description}`] };
}

/** Everything that was tied to marks, each with its distances that count, in the order of the tolerance sheet. */
export function tiedIn(context: Context): readonly Tied[] {
  const groups = grouped(enteredTies(context), ({ item, fact }) => pointOf(item, fact.what.tag as string | undefined));
  return [...groups.values()].flatMap((all) => {
    const [first] = all;
    if (first === undefined) return [];
    const ties = [...grouped(all, ({ mark }) => mark)].map(([mark, reads]): TieRead => {
      const distances = reads.map(({ distance }) => distance) as unknown as NonEmpty<Uncertain>;
      return {
        mark,
        typed: reads.map(({ fact }) => firstTyped(context, fact, false)).join(", "),
        distance: reads.length === 1 ? distances[0] : repeated(distances).mean,
      };
    });
    const side = all.map(({ fact }) => fact.what.side).find((said) => said === "left" || said === "right");
    return [{ ...namesOf(context, first), ties, ...(side === undefined ? {} : { side }) }];
  });
}
