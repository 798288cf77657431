import { asTyped, type DesignSwitches, type FigureSource, type FigureUsed, figuresUsed } from "../job/index.ts";
import type { NumbersUsedView } from "./design-page-model.ts";
import type { LabelledText } from "./model.ts";
import type { DesignSayer } from "./say-design.ts";
import type { SayDesignPage } from "./say-design-page.ts";

const factText = ({ fact }: FigureUsed): string => (typeof fact === "string" ? fact : asTyped(fact.typed, fact.unit));

/** The numbers that the design check rests on, by where they came from: the design first, then each kit card. */
export function numbersUsedViews(
  source: FigureSource,
  switches: DesignSwitches,
  say: SayDesignPage,
  sayer: DesignSayer,
): readonly NumbersUsedView[] {
  const used = figuresUsed(source, switches);
  const text = (one: FigureUsed): LabelledText => ({ label: sayer.figure(one.key), text: factText(one) });
  const yesOrNo = (["checkValve", "roundBasin"] as const).flatMap((id) =>
    switches[id] === undefined ? [] : [{ label: say(`switch.${id}`), text: say(switches[id] ? "switch.yes" : "switch.no") }],
  );
  const own = [...used.filter(({ card }) => card === undefined).map(text), ...yesOrNo];
  const cards = source.kitCards.flatMap((card) => {
    const numbers = used.filter((one) => one.card === card).map(text);
    return numbers.length === 0 ? [] : [{ from: say("numbers.card", { part: card.part }), source: card.source ?? "", numbers }];
  });
  return [...(own.length === 0 ? [] : [{ from: say("numbers.design"), source: "", numbers: own }]), ...cards];
}
