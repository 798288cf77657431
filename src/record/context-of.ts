import { type Finding, factsOf, type JobState, type Live, lookBehind } from "../job/index.ts";
import type { Json, Ledger } from "../ledger/index.ts";
import type { Context, PhotoKnown } from "./context.ts";
import type { RecordModel } from "./model.ts";
import { type Naming, nameBehind, nameTypedWith, type Person, printedName } from "./names.ts";
import { makeSayer } from "./say.ts";
import type { CompanySettings } from "./settings.ts";
import { dayText, typedDay } from "./when.ts";
import { type RecordText, recordEn } from "./words/record-en.ts";
import { recordEs } from "./words/record-es.ts";

export interface RecordInput {
  /** The whole ledger; the edition that is attached is made by the caller with `customerEdition`. */
  readonly ledger: Ledger;
  /** The edition as it will be attached: what it withholds is counted and said. */
  readonly attached: Ledger;
  readonly edition: "customer" | "company";
  readonly version: number;
  /** The edge's clock, ms. */
  readonly issuedAt: number;
  /** The company's settings now: name, paper, warranty. Those that the job took over come first. */
  readonly settings: Json;
  /** Thumbprint of the key that it will be sealed with (RFC 7638): on paper it can be compared by eye. */
  readonly key?: string;
  /** The record issued before this one, where there is one: what changed since is said. */
  readonly before?: RecordModel;
  /** Language and paper of the receiver, where they are others than the job's and the company's. */
  readonly receiver?: { readonly language?: "en" | "es" | undefined; readonly paper?: "letter" | "a4" | undefined };
  readonly people: Readonly<Record<string, Person>>;
  readonly photos: Readonly<Record<string, PhotoKnown>>;
}

/** Entries that counted before rework: they print aside. */
function entriesBeforeRework(state: JobState): ReadonlySet<string> {
  const about = (fact: Live): boolean =>
    state.cuts.some((cut) => {
      if (cut.why !== "reworked" || cut.position < fact.position || (cut.about.tag !== undefined && cut.about.tag !== fact.what.tag))
        return false;
      if (cut.about.item !== undefined) return cut.about.item === fact.what.item;
      return state.sheet?.checks.find((c) => c.id === cut.about.check)?.items.includes(String(fact.what.item)) === true;
    });
  return new Set(state.facts.filter((f) => typeof f.what.item === "string" && about(f)).map((f) => f.id));
}

/** The sheet of a job that has taken over none: a record is printed all the same, and says so. */
const noSheet = {
  format: 1,
  id: "",
  version: 0,
  title: { en: "" },
  switches: [],
  figures: [],
  instruments: [],
  placings: [],
  tagSets: [],
  coverings: [],
  cautions: [],
  steps: [],
  items: [],
  oneOf: [],
  checks: [],
} as const;

/** What every part of the record is made from. */
export function contextOf(input: RecordInput, state: JobState, settings: CompanySettings, findings: readonly Finding[]): Context {
  const { language, zone } = settings;
  const { edition, people, photos } = input;
  const words = language === "es" ? recordEs : recordEn;
  const facts = new Map(state.facts.map((f) => [f.id, f]));
  const sayer = makeSayer({
    language,
    units: settings.units,
    zone,
    ...(state.sheet ? { sheet: state.sheet } : {}),
    behind: (entry) => {
      const fact = facts.get(entry);
      return fact === undefined
        ? { name: "", reason: "" }
        : { name: nameBehind(fact, naming), reason: String(fact.what.reason ?? fact.what.done ?? "") };
    },
    look: (finding) => {
      const look = lookBehind(state, finding);
      return look && { entry: look.id, at: Math.round(look.at) };
    },
  });
  const naming: Naming = {
    people,
    style: edition === "company" || settings.namesInFull ? "in full" : "role and initials",
    role: sayer.role,
  };
  const numbers = new Map(input.ledger.entries.map(({ envelope }) => [envelope.id, envelope.number]));
  return {
    state,
    sheet: state.sheet ?? noSheet,
    settings,
    findings,
    sayer,
    photos,
    language,
    edition,
    texts: (key: RecordText): string => words[key],
    day: (typed) => {
      const day = typedDay(typed);
      return day === undefined ? typed : dayText(day, language);
    },
    numberOf: (entry) => numbers.get(entry),
    nameOf: (fact) => nameBehind(fact, naming),
    nameTyped: (fact) => nameTypedWith(fact, naming),
    namePrinted: (name, role) => printedName(name, role, naming.style),
    lookedAt: new Map(factsOf(state, "picture-looked-at").map((f) => [f.what.picture, f as Live])),
    beforeRework: entriesBeforeRework(state),
  };
}
