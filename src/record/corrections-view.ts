import { asTyped, factKinds, factsOf, type Live } from "../job/index.ts";
import type { Json } from "../ledger/index.ts";
import type { Context } from "./context.ts";
import type { CorrectionView } from "./model.ts";
import { fill } from "./speaking.ts";

type What = Live["what"];

const isFields = (value: Json | undefined): value is What => typeof value === "object" && value !== null && !Array.isArray(value);

/** An entry's words before any correction. */
const originalOf = (fact: Live): What => (isFields(fact.entry.what) ? fact.entry.what : {});

/** A moment as it was typed, or a value with its unit. */
export function typedText({ sayer }: Context, what: What, isInstant: boolean): string {
  const typed = String(what.typed ?? "");
  const at = isInstant ? Date.parse(typed) : Number.NaN;
  return Number.isNaN(at) ? asTyped(typed, String(what.unit ?? "")) : sayer.moment(at);
}

/** What an entry says, in the fewest words; an empty text where that is no one thing. */
function saidBy(context: Context, fact: Live, what: What): string {
  const { sayer, sheet, texts } = context;
  const item = sheet.items.find((i) => i.id === what.item);
  if (fact.kind === "reading-taken") return typedText(context, what, item?.quantity === "instant");
  if (fact.kind === "answered") return sayer.words(item?.choices?.find((c) => c.id === what.choice)?.title) || String(what.choice ?? "");
  if (typeof what.photo === "string") return `${texts("photo")} ${what.photo.slice(0, 16)}`;
  return typeof what.text === "string" ? what.text : "";
}

/** What became of an entry: corrected to something, withdrawn or moved; with who said so and why. Undefined: it stands as entered. */
export function becameOf(context: Context, fact: Live): { readonly text: string; readonly by?: Live } | undefined {
  const { state, texts, nameOf } = context;
  if (fact.standing === "moved out") {
    const by = factsOf(state, "moved-out").findLast((f) => f.what.entries.some(({ id }) => id === fact.id));
    return { text: because(texts("moved-out"), by), ...(by ? { by } : {}) };
  }
  const by = state.facts.find(({ id }) => id === fact.correctedBy);
  if (fact.standing === "withdrawn") return { text: because(texts("withdrawn"), by), ...(by ? { by } : {}) };
  if (by === undefined) return undefined;
  const now = [saidBy(context, fact, fact.what), movedTo(context, fact)].filter((part) => part !== "").join(", ");
  return { text: because(now === "" ? texts("corrected") : fill(texts("corrected-to"), { now }), by), by };

  function because(text: string, correction: Live | undefined): string {
    if (correction === undefined) return text;
    return fill(texts("because"), { text, name: nameOf(correction), reason: String(correction.what.reason ?? "") });
  }
}

/** Where a correction filed it instead: another item or tag. */
function movedTo({ sayer }: Context, fact: Live): string {
  const before = originalOf(fact);
  const { item, tag } = fact.what;
  if (before.item === item && before.tag === tag) return "";
  return sayer.title({ ...(typeof item === "string" ? { item } : {}), ...(typeof tag === "string" ? { tag } : {}) });
}

/** A reading as it was first typed. */
export const firstTyped = (context: Context, fact: Live, isInstant: boolean): string => typedText(context, originalOf(fact), isInstant);

const known: ReadonlySet<string> = new Set(factKinds);

function titleOf({ sayer, texts }: Context, fact: Live): string {
  const { item, tag } = originalOf(fact);
  if (typeof item === "string") return sayer.title({ item, ...(typeof tag === "string" ? { tag } : {}) });
  return known.has(fact.kind) ? fill(texts("entry-of-kind"), { kind: fact.kind }) : texts("unknown-kind");
}

/** Every entry that was corrected, withdrawn or moved, as it first stood and what became of it; nothing is dropped. */
export function correctionViews(context: Context): readonly CorrectionView[] {
  const { state, edition, numberOf, sayer } = context;
  return state.facts.flatMap((fact) => {
    const became = becameOf(context, fact);
    if (became === undefined) return [];
    const number = numberOf(fact.id);
    // what belongs to somebody else's job is not for this customer
    const isForeign = fact.standing === "moved out" && edition === "customer";
    return [
      {
        title: isForeign ? context.texts("entry-foreign") : titleOf(context, fact),
        was: isForeign ? "" : saidBy(context, fact, originalOf(fact)),
        became: became.text,
        when: became.by === undefined ? "" : sayer.moment(became.by.at),
        ...(number === undefined ? {} : { number }),
      },
    ];
  });
}
