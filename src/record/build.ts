import {
  clearances,
  type Finding,
  factsOf,
  findings as findingsOf,
  handingOver,
  type JobState,
  jobLedgerOf,
  jobState,
  type Live,
  RULES,
  whatOf,
} from "../job/index.ts";
import { isWithheld, type Json, type Ledger } from "../ledger/index.ts";
import type { Context, PhotoKnown } from "./context.ts";
import { coveringViews } from "./coverings-view.ts";
import { decisionViews } from "./decisions-view.ts";
import type { ExceptionView, LabelledText, RecordModel } from "./model.ts";
import { nameBehind, type Person } from "./names.ts";
import { fill, makeSayer, type Sayer } from "./say.ts";
import { readSettings } from "./settings.ts";
import { findingView, stepViews } from "./steps-view.ts";
import { signatureView, warrantyView } from "./warranty-view.ts";
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

type Fields = { readonly [key: string]: Json };
const fields = (value: Json | undefined): Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Fields) : {};
const textIn = (value: Json | undefined): string | undefined => (typeof value === "string" && value !== "" ? value : undefined);

/** A contact as typed: name, and how to reach it only in the company's edition. */
function contact(value: Json | undefined, edition: "customer" | "company"): string | undefined {
  const typed = textIn(value);
  if (typed !== undefined) return typed;
  const given = fields(value);
  const parts = [textIn(given.name), ...(edition === "company" ? [textIn(given.phone), textIn(given.contact)] : [])].filter(
    (p) => p !== undefined,
  );
  return parts.length > 0 ? parts.join(", ") : undefined;
}

function titleLines(state: JobState, context: Context, edition: "customer" | "company"): readonly LabelledText[] {
  const { texts } = context;
  const opened = state.facts.find((f) => f.kind === "job-opened");
  const who = fields(opened?.entry.who);
  const where = fields(opened?.entry.where);
  const rows: readonly (readonly [RecordText, string | undefined])[] = [
    ["label-site", textIn(who.address) ?? textIn(where.address)],
    ["label-customer", contact(who.customer, edition)],
    ["label-contact", contact(who.onSite, edition)],
    ["label-receiver", contact(who.receiver, edition)],
    ["label-zone", fill(texts("times-in"), { zone: state.opened?.zone ?? context.settings.zone })],
    ["label-edition", texts(`edition-${edition}`)],
  ];
  return rows.flatMap(([label, text]) => (text === undefined ? [] : [{ label: texts(label), text }]));
}

function numbers(context: Context, entries: number): readonly LabelledText[] {
  const { findings, state, texts, sayer } = context;
  const count = (verdict: Finding["verdict"]): string => String(findings.filter((f) => f.verdict === verdict).length);
  const facts = (kind: string): number => state.facts.filter((f) => f.kind === kind && f.standing === "counts").length;
  const reworkMinutes = factsOf(state, "reworked").reduce((sum, f) => sum + f.what.minutes, 0);
  const rows: readonly (readonly [RecordText, string])[] = [
    ["number-findings", String(findings.length)],
    ["number-within", count("within")],
    ["number-outside", count("outside")],
    ["number-too-close", count("too close to call")],
    ["number-missing", count("not taken")],
    ["number-could-not", count("could not be taken")],
    ["number-apart", count("does not apply")],
    ["number-pictures", String(facts("picture-taken") + facts("received-otherwise"))],
    ["number-readings", String(facts("reading-taken"))],
    ["number-visits", String(facts("visit-begun"))],
    ["number-rework", sayer.quantity("duration", reworkMinutes * 60_000)],
    ["number-entries", String(entries)],
  ];
  return rows.map(([label, text]) => ({ label: texts(label), text }));
}

/** In the order in which they are to be read; undefined: no exception. */
function exceptionRank(finding: Finding): number | undefined {
  const asked = finding.weight === "holds" || finding.weight === "asked";
  if (finding.verdict === "outside") return 0;
  if (finding.verdict === "too close to call") return 1;
  if (finding.verdict === "could not be taken") return 2;
  if (finding.by !== undefined && finding.by.way !== "does not apply" && finding.by.way !== "rework") return 3;
  if (asked && finding.verdict === "not taken") return 4;
  return finding.beforeRework?.some(({ verdict }) => verdict !== "within") ? 5 : undefined;
}

function exceptionsOf(context: Context, coverings: RecordModel["coverings"]): readonly ExceptionView[] {
  const odd = coverings.filter((c) => c.tone === "outside" || c.tone === "undecided");
  const ranked = context.findings.flatMap((finding) => {
    const rank = exceptionRank(finding);
    return rank === undefined ? [] : [{ finding, rank }];
  });
  return [
    ...odd.map((c) => ({ title: c.title, verdictWord: c.state, tone: c.tone, says: [c.when, c.clearance, ...c.lines].join("; ") })),
    ...ranked
      .sort((a, b) => a.rank - b.rank)
      .map(({ finding }) => {
        const { title, verdictWord, tone, says } = findingView(context, finding);
        return { title, verdictWord, tone, says };
      }),
  ];
}

function equipment(context: Context): RecordModel["equipment"] {
  const { state, sheet, sayer, texts } = context;
  return state.kitCards.map((card) => ({
    part: card.part,
    facts: Object.entries(card.facts).map(([key, fact]) => {
      const asked = sheet.figures.find((f) => f.id === key);
      const label = sayer.words(asked?.title) || key;
      return {
        label,
        text:
          fact === "unknown"
            ? texts("kit-unknown")
            : typeof fact === "string"
              ? fact
              : /[\p{L}'"°%]/u.test(fact.typed)
                ? fact.typed
                : `${fact.typed} ${fact.unit}`,
      };
    }),
  }));
}

function papers(context: Context): readonly LabelledText[] {
  const { state, texts } = context;
  const added = factsOf(state, "paper-added").map((f) => ({ label: f.what.title, text: f.what.paper }));
  const inspected = factsOf(state, "inspected-by-authority").map((f) => ({
    label: `${texts("inspected")}: ${f.what.what}`,
    text: [texts(`state-${f.what.state}`), f.what.number].filter((p) => p !== undefined).join(", "),
  }));
  const others = factsOf(state, "done-by-others").map((f) => ({
    label: texts("by-others"),
    text: `${f.what.what} (${context.nameOf(f)})`,
  }));
  return [...added, ...inspected, ...others];
}

function withheldText(attached: Ledger, texts: Context["texts"]): string {
  const bodies = attached.entries.map(({ body }) => body);
  const some = bodies.filter((body) => [body.who, body.where].some((part) => part !== undefined && isWithheld(part))).length;
  const whole = bodies.filter((body) => body.what !== undefined && isWithheld(body.what)).length;
  return some + whole === 0 ? texts("withheld-none") : fill(texts("withheld-some"), { entries: String(some), whole: String(whole) });
}

function standing(context: Context, all: ReturnType<typeof clearances>, missing: number, exceptions: number): string {
  const { texts } = context;
  const covered = all.filter((c) => c.covered !== undefined);
  const clear = covered.filter((c) => c.covered?.shown !== "not yet" && c.covered?.noLaterThan !== true && !c.covered?.laterDoubted);
  const first =
    covered.length === all.length && clear.length === all.length
      ? texts("standing-all-clear")
      : fill(texts("standing-covered"), { covered: String(covered.length), all: String(all.length), clear: String(clear.length) });
  return [
    first,
    missing === 0 ? texts("handed-everything") : fill(texts("handed-missing"), { count: String(missing) }),
    ...(exceptions === 0 ? [] : [fill(texts("standing-exceptions"), { count: String(exceptions) })]),
  ].join(" ");
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

function sayerFor(
  input: RecordInput,
  state: JobState,
  settings: ReturnType<typeof readSettings>,
): { readonly sayer: Sayer; readonly nameOf: (fact: Live) => string } {
  const style = input.edition === "company" || settings.namesInFull ? "in full" : "role and initials";
  const facts = new Map(state.facts.map((f) => [f.id, f]));
  const nameOf = (fact: Live): string => nameBehind(fact, input.people, sayer, style);
  const sayer: Sayer = makeSayer({
    language: state.opened?.language ?? settings.language,
    units: state.opened?.units ?? settings.units,
    zone: state.opened?.zone ?? settings.zone,
    ...(state.sheet ? { sheet: state.sheet } : {}),
    behind: (entry) => {
      const fact = facts.get(entry);
      return fact === undefined
        ? { name: "", reason: "" }
        : { name: nameOf(fact), reason: String(fact.what.reason ?? fact.what.done ?? "") };
    },
  });
  return { sayer, nameOf };
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

/**
 * The view model of a job's record. A function of the ledger, the company's settings and what is known of the photos:
 * the date is the one handed in, the rules are those of this program.
 */
export function recordModel(input: RecordInput): RecordModel {
  const state = jobState(jobLedgerOf(input.ledger));
  const settings = readSettings((state.settings as Json | undefined) ?? input.settings);
  const language = state.opened?.language ?? settings.language;
  const words = language === "es" ? recordEs : recordEn;
  const texts = (key: RecordText): string => words[key];
  const { sayer, nameOf } = sayerFor(input, state, settings);
  const findings = findingsOf(state);
  const numberOf = new Map(input.ledger.entries.map(({ envelope }) => [envelope.id, envelope.number]));
  const looked = factsOf(state, "picture-looked-at");
  const context: Context = {
    state,
    sheet: state.sheet ?? noSheet,
    settings: { ...settings, zone: state.opened?.zone ?? settings.zone },
    findings,
    sayer,
    photos: input.photos,
    texts,
    source: (source) => (source === "own" ? texts("source-own") : source === "common practice" ? texts("source-common") : source),
    numberOf: (entry) => numberOf.get(entry),
    nameOf,
    instantTyped: (fact) => {
      const at = Date.parse(String(whatOf(fact, "reading-taken").typed));
      return Number.isNaN(at) ? String(fact.what.typed) : sayer.moment(at);
    },
    lookedAt: new Map(looked.map((f) => [f.what.picture, f as Live])),
    beforeRework: entriesBeforeRework(state),
  };
  const all = clearances(state, findings, input.issuedAt);
  const coverings = coveringViews(context, all);
  const handing = handingOver(state, findings, input.issuedAt);
  const exceptions = exceptionsOf(context, coverings);
  const cautions = [...new Set(context.sheet.cautions.map((c) => sayer.words(c.text)))];
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
      lines: titleLines(state, context, input.edition),
    },
    standing: state.sheet === undefined ? texts("no-sheet") : standing(context, all, handing.missing.length, exceptions.length),
    numbers: numbers(context, input.ledger.entries.length),
    exceptions,
    coverings,
    steps: stepViews(context, findings),
    accepted: decisionViews(context),
    leftToDo: handing.leftToDo.map(({ text, by, done }) => ({ text, by, state: texts(done ? "left-done" : "left-open") })),
    papers: papers(context),
    equipment: equipment(context),
    cautions: [texts("record-cautions-local"), ...cautions],
    warranty: warrantyView(context, language),
    signature: signatureView(context),
    proof: {
      head: input.ledger.head.hash,
      entries: input.ledger.head.number,
      rules: RULES,
      sheet: `${sayer.words(context.sheet.title)} ${context.sheet.version}${state.sheetDigest === undefined ? "" : ` (${state.sheetDigest.slice(0, 16)}…)`}`,
      how: [texts("how-1"), texts("how-2"), texts("how-3")],
      withheld: withheldText(input.attached, texts),
    },
    findings: findings.map((finding) => findingView(context, finding)),
  };
}
