import {
  beforehandOf,
  clearances,
  type Finding,
  factsOf,
  findings as findingsOf,
  type HandingOver,
  handingOver,
  type JobState,
  jobLedgerOf,
  jobState,
  type Live,
  RULES,
} from "../job/index.ts";
import type { Json, Ledger } from "../ledger/index.ts";
import type { Context, PhotoKnown } from "./context.ts";
import { correctionViews } from "./corrections-view.ts";
import { coveringViews, dueViews } from "./coverings-view.ts";
import { decisionViews } from "./decisions-view.ts";
import { designViews, equipmentViews, paperPictures, paperViews } from "./equipment-view.ts";
import { exceptionsFirst } from "./exceptions.ts";
import { findingView, whoAndWhen } from "./finding-view.ts";
import type { ExceptionView, RecordModel } from "./model.ts";
import { type Naming, nameBehind, nameTypedWith, type Person, printedName } from "./names.ts";
import { numbersOf, standingText } from "./numbers-view.ts";
import { otherViews } from "./others-view.ts";
import { makeSayer } from "./say.ts";
import { type CompanySettings, readSettings } from "./settings.ts";
import { freeNotes, stepViews } from "./steps-view.ts";
import { titleLines, withheldText } from "./title-view.ts";
import { visitViews } from "./visits-view.ts";
import { signatureView, warrantyView } from "./warranty-view.ts";
import { dayText, typedDay } from "./when.ts";
import { headingsEn } from "./words/headings-en.ts";
import { headingsEs } from "./words/headings-es.ts";
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
  readonly people: Readonly<Record<string, Person>>;
  readonly photos: Readonly<Record<string, PhotoKnown>>;
}

function exceptionViews(context: Context, coverings: RecordModel["coverings"]): readonly ExceptionView[] {
  const odd = coverings.filter((c) => c.tone === "outside" || c.tone === "undecided");
  return [
    ...odd.map((c) => ({ title: c.title, verdictWord: c.state, tone: c.tone, says: [c.when, c.clearance, ...c.lines].join("; ") })),
    ...exceptionsFirst(context.findings).map((finding) => {
      const { title, verdictWord, tone, says } = findingView(context, finding);
      return { title, verdictWord, tone, says };
    }),
  ];
}

function leftToDoViews(context: Context, { leftToDo }: HandingOver): RecordModel["leftToDo"] {
  const { state, texts } = context;
  return leftToDo.flatMap(({ entry, text, done }) => {
    const fact = state.facts.find(({ id }) => id === entry);
    return fact === undefined ? [] : [{ text, by: whoAndWhen(context, fact), state: texts(done ? "left-done" : "left-open") }];
  });
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

function contextOf(input: RecordInput, state: JobState, settings: CompanySettings, findings: readonly Finding[]): Context {
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

/** What the job itself says of zone, language and units comes before the company's settings. */
function settingsOf({ opened, settings }: JobState, given: Json): CompanySettings {
  const { zone, language, units, ...own } = readSettings((settings as Json | undefined) ?? given);
  return { ...own, zone: opened?.zone ?? zone, language: opened?.language ?? language, units: opened?.units ?? units };
}

/**
 * The view model of a job's record. A function of the ledger, the company's settings and what is known of the photos:
 * the date is the one handed in, the rules are those of this program.
 */
export function recordModel(input: RecordInput): RecordModel {
  const state = jobState(jobLedgerOf(input.ledger));
  const settings = settingsOf(state, input.settings);
  const findings = findingsOf(state);
  const context = contextOf(input, state, settings, findings);
  const { texts, sayer, sheet, language } = context;
  const all = clearances(state, findings, input.issuedAt);
  const coverings = coveringViews(context, all);
  const handing = handingOver(state, findings, input.issuedAt);
  const exceptions = exceptionViews(context, coverings);
  const cautions = [...new Set(sheet.cautions.map((c) => sayer.words(c.text)))];
  const steps = stepViews(context, findings);
  return {
    format: 1,
    edition: input.edition,
    language,
    paper: settings.paper,
    words: language === "es" ? headingsEs : headingsEn,
    company: { name: settings.name, lines: settings.lines },
    title: {
      record: texts("record-title"),
      job: state.opened?.title ?? input.ledger.job,
      ...(state.opened?.ownNumber === undefined ? {} : { ownNumber: state.opened.ownNumber }),
      version: input.version,
      issued: sayer.moment(input.issuedAt),
      issuedAt: input.issuedAt,
      lines: titleLines(state, context),
    },
    standing: state.sheet === undefined ? texts("no-sheet") : standingText(context, all, handing.missing.length, exceptions.length),
    numbers: numbersOf(context, input.ledger.entries.length),
    exceptions,
    coverings,
    due: state.sheet === undefined ? [] : dueViews(context, beforehandOf(state, findings, input.issuedAt), handing),
    steps,
    accepted: decisionViews(context),
    leftToDo: leftToDoViews(context, handing),
    visits: visitViews(context),
    notes: freeNotes(context),
    others: otherViews(context),
    corrections: correctionViews(context),
    papers: paperViews(context),
    paperPictures: paperPictures(context),
    design: designViews(context),
    equipment: equipmentViews(context),
    cautions: [texts("record-cautions-local"), ...cautions],
    warranty: warrantyView(context, language),
    signature: signatureView(context),
    proof: {
      head: input.ledger.head.hash,
      entries: input.ledger.head.number,
      rules: RULES,
      sheet: `${sayer.words(sheet.title)} ${sheet.version}${state.sheetDigest === undefined ? "" : ` (${state.sheetDigest.slice(0, 16)}…)`}`,
      how: [texts("how-1"), texts("how-2"), texts("how-3")],
      withheld: withheldText(context, input.attached),
    },
    findings: findingsAsShown(context, steps),
  };
}

/** Every finding, said where it prints. */
function findingsAsShown(context: Context, steps: RecordModel["steps"]): RecordModel["findings"] {
  const shown = new Map(steps.flatMap((step) => step.findings.map((view) => [`${view.step} ${view.check} ${view.tag ?? ""}`, view])));
  return context.findings.map(
    (finding) => shown.get(`${finding.step} ${finding.check} ${finding.tag ?? ""}`) ?? findingView(context, finding),
  );
}
