import {
  beforehandOf,
  clearances,
  findings as findingsOf,
  type HandingOver,
  handingOver,
  jobLedgerOf,
  jobState,
  RULES,
} from "../job/index.ts";
import { budgetView } from "./budget-view.ts";
import { changedView } from "./changed-view.ts";
import { companyView } from "./company-view.ts";
import { comparedViews } from "./compared-view.ts";
import type { Context } from "./context.ts";
import { contextOf, type RecordInput } from "./context-of.ts";
import { correctionViews } from "./corrections-view.ts";
import { coveringViews, dueViews } from "./coverings-view.ts";
import { decisionViews } from "./decisions-view.ts";
import { enclosureViews } from "./enclosures-view.ts";
import { designViews, equipmentViews, paperPictures, paperViews } from "./equipment-view.ts";
import { exceptionsFirst } from "./exceptions.ts";
import { findingView, whoAndWhen } from "./finding-view.ts";
import { glueSessionViews } from "./glue-view.ts";
import type { ExceptionView, RecordModel } from "./model.ts";
import { numbersOf, standingText } from "./numbers-view.ts";
import { otherViews } from "./others-view.ts";
import { planView } from "./plan-view.ts";
import { sectionView } from "./section-view.ts";
import { jobSettings } from "./settings.ts";
import { freeNotes, stepViews } from "./steps-view.ts";
import { summaryView } from "./summary-view.ts";
import { titleLines, withheldText } from "./title-view.ts";
import { triedViews } from "./tried-view.ts";
import { upkeepView } from "./upkeep-view.ts";
import { visitViews } from "./visits-view.ts";
import { registrationViews, signatureView, warrantyView } from "./warranty-view.ts";
import { headingsEn } from "./words/headings-en.ts";
import { headingsEs } from "./words/headings-es.ts";

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

/**
 * The view model of a job's record. A function of the ledger, the company's settings and what is known of the photos:
 * the date is the one handed in, the rules are those of this program.
 */
export function recordModel(input: RecordInput): RecordModel {
  const state = jobState(jobLedgerOf(input.ledger));
  const own = jobSettings(state, input.settings);
  const settings = { ...own, language: input.receiver?.language ?? own.language, paper: input.receiver?.paper ?? own.paper };
  const findings = findingsOf(state);
  const context = contextOf(input, state, settings, findings);
  const { texts, sayer, sheet, language } = context;
  const all = clearances(state, findings, input.issuedAt);
  const coverings = coveringViews(context, all);
  const handing = handingOver(state, findings, input.issuedAt);
  const exceptions = exceptionViews(context, coverings);
  const cautions = [...new Set(sheet.cautions.map((c) => sayer.words(c.text)))];
  const steps = stepViews(context, findings);
  const upkeep = upkeepView(context);
  const enclosures = enclosureViews(context);
  const model: RecordModel = {
    format: 1,
    edition: input.edition,
    language,
    paper: settings.paper,
    words: language === "es" ? headingsEs : headingsEn,
    company: companyView(settings, input.photos),
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
    leftToDo: [...leftToDoViews(context, handing), ...registrationViews(context, input.issuedAt)],
    visits: visitViews(context),
    notes: freeNotes(context),
    others: otherViews(context),
    corrections: correctionViews(context),
    papers: paperViews(context),
    paperPictures: paperPictures(context),
    ...(enclosures.length > 0 && { enclosures }),
    design: designViews(context),
    ...drawnParts(context),
    equipment: equipmentViews(context),
    ...(upkeep && { upkeep }),
    cautions: [texts("record-cautions-local"), ...cautions],
    warranty: warrantyView(context, input.issuedAt),
    signature: signatureView(context, input.issuedAt),
    proof: {
      head: input.ledger.head.hash,
      entries: input.ledger.head.number,
      rules: RULES,
      ...(input.key === undefined ? {} : { key: input.key }),
      sheet: `${sayer.words(sheet.title)} ${sheet.version}${state.sheetDigest === undefined ? "" : ` (${state.sheetDigest.slice(0, 16)}…)`}`,
      how: [texts("how-1"), texts("how-2"), texts("how-3")],
      withheld: withheldText(context, input.attached),
    },
    findings: findingsAsShown(context, steps),
  };
  return input.before === undefined ? model : { ...model, changed: changedView(context, input.before, model) };
}

/** What is drawn and worked out: only where there is something to show. */
function drawnParts(
  context: Context,
): Pick<RecordModel, "summary" | "compared" | "budget" | "glueSessions" | "tried" | "plan" | "section"> {
  const [plan, section, budget] = [planView(context), sectionView(context), budgetView(context)];
  return {
    summary: summaryView(context, plan),
    compared: comparedViews(context),
    glueSessions: glueSessionViews(context),
    tried: triedViews(context),
    ...(budget && { budget }),
    ...(plan && { plan }),
    ...(section && { section }),
  };
}

/** Every finding, said where it prints. */
function findingsAsShown(context: Context, steps: RecordModel["steps"]): RecordModel["findings"] {
  const shown = new Map(steps.flatMap((step) => step.findings.map((view) => [`${view.step} ${view.check} ${view.tag ?? ""}`, view])));
  return context.findings.map(
    (finding) => shown.get(`${finding.step} ${finding.check} ${finding.tag ?? ""}`) ?? findingView(context, finding),
  );
}
