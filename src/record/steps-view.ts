import {
  asTyped,
  designFor,
  type Finding,
  type Item,
  type JobState,
  type Live,
  type Step,
  switchOn,
  type ToleranceSheet,
  whatOf,
} from "../job/index.ts";
import type { Context } from "./context.ts";
import type { FindingView, PictureView, ReadingView, StepView, Tone } from "./model.ts";

const tones: Readonly<Record<Finding["verdict"], Tone>> = {
  within: "within",
  outside: "outside",
  "too close to call": "undecided",
  "not taken": "missing",
  "could not be taken": "missing",
  "does not apply": "apart",
};

export const toneOf = (finding: Finding): Tone => tones[finding.verdict];

const sheetSource = (sheet: ToleranceSheet, finding: Finding): string | undefined =>
  (sheet.checks.find((c) => c.id === finding.check) ?? sheet.items.find((i) => i.id === finding.check))?.source;

/** One finding as it prints. */
export function findingView(context: Context, finding: Finding): FindingView {
  const { sayer, sheet, numberOf } = context;
  const step = sheet.steps.find((s) => s.id === finding.step);
  const { kind, value, doubt, aim } = finding;
  const source = sheetSource(sheet, finding);
  return {
    step: finding.step,
    stepTitle: sayer.words(step?.title),
    check: finding.check,
    title: sayer.titleOf(finding),
    ...(finding.tag === undefined ? {} : { tag: finding.tag }),
    verdict: finding.verdict,
    verdictWord: sayer.verdict(finding.verdict),
    tone: toneOf(finding),
    says: sayer.finding(finding),
    ...(kind === undefined || value === undefined ? {} : { value: sayer.quantity(kind, value, sayer.marks(finding)) }),
    ...(kind === undefined || doubt === undefined ? {} : { doubt: `± ${sayer.doubt(kind, doubt)}` }),
    ...(kind === undefined || aim === undefined ? {} : { aim: sayer.quantity(kind, aim, sayer.marks(finding)) }),
    ...(kind === undefined || (finding.lower === undefined && finding.upper === undefined) ? {} : { limit: sayer.limit(finding) }),
    ...(source === undefined ? {} : { source: context.source(source) }),
    entries: finding.entries.map((id) => numberOf(id)).filter((n) => n !== undefined),
  };
}

const itemIn = (sheet: ToleranceSheet, fact: Live): Item | undefined => sheet.items.find((i) => i.id === fact.what.item);

/** When something was made and received; the clock's skew where it is more than five minutes. */
export function whenText({ sayer, texts }: Context, fact: Live): string {
  const received = fact.entry.received;
  const made = `${texts("made")} ${sayer.moment(fact.at)}`;
  return received === undefined ? made : `${made}, ${texts("received")} ${sayer.moment(received)}`;
}

function aside(context: Context, fact: Live): string | undefined {
  const { texts } = context;
  if (fact.standing === "withdrawn") return texts("withdrawn");
  if (fact.standing === "moved out") return texts("moved-out");
  if (context.beforeRework.has(fact.id)) return texts("before-rework");
  return fact.correctedBy === undefined ? undefined : texts("corrected");
}

function howRead(context: Context, fact: Live, item: Item): string {
  const { sayer, sheet, state } = context;
  const setUp = typeof fact.what.setUp === "string" ? state.setUps.get(fact.what.setUp) : undefined;
  const instrument = sheet.instruments.find((i) => i.id === (fact.what.instrument ?? setUp?.instrument ?? item.instrument));
  const placing = sheet.placings.find((p) => p.id === (fact.what.placing ?? item.placing));
  const receiver = typeof fact.what.receiver === "string" ? fact.what.receiver : setUp?.receiver;
  const distance = setUp?.distance;
  return [
    sayer.words(instrument?.title),
    receiver === undefined ? "" : context.texts(receiver === "fine" ? "receiver-fine" : "receiver-coarse"),
    distance === undefined ? "" : `${asTyped(distance.typed, distance.unit)}`,
    sayer.words(placing?.title),
  ]
    .filter((part) => part !== "")
    .join(", ");
}

function readingView(context: Context, fact: Live, item: Item): ReadingView {
  const set = aside(context, fact);
  const number = context.numberOf(fact.id);
  const tag = typeof fact.what.tag === "string" ? fact.what.tag : undefined;
  return {
    title: context.sayer.title({ item: item.id, ...(tag === undefined ? {} : { tag }) }),
    ...(tag === undefined ? {} : { tag }),
    typed: item.quantity === "instant" ? context.instantTyped(fact) : asTyped(String(fact.what.typed ?? ""), String(fact.what.unit ?? "")),
    how: howRead(context, fact, item),
    when: context.sayer.moment(fact.at),
    ...(number === undefined ? {} : { number }),
    ...(set === undefined ? {} : { aside: set }),
  };
}

function lookedAt(context: Context, fact: Live): string {
  const { texts } = context;
  const looked = context.lookedAt.get(fact.id);
  if (looked === undefined) return texts("nobody-looked");
  return `${texts("looked-at-by")} ${context.nameOf(looked)}, ${context.sayer.moment(looked.at)}: ${texts(`looked-${whatOf(looked, "picture-looked-at").says}`)}`;
}

function pictureView(context: Context, fact: Live, item: Item): PictureView {
  const { sayer, photos, texts } = context;
  const tag = typeof fact.what.tag === "string" ? fact.what.tag : undefined;
  const photo = String(fact.what.photo ?? "");
  const known = photos[photo];
  const title = sayer.title({ item: item.id, ...(tag === undefined ? {} : { tag }) });
  const caption = typeof fact.what.caption === "string" ? fact.what.caption : "";
  const set = aside(context, fact);
  const number = context.numberOf(fact.id);
  const missing =
    known === undefined
      ? texts("photo-not-here")
      : known.unreadable
        ? texts("photo-cannot-be-read")
        : known.rendition === undefined
          ? texts("photo-not-read-yet")
          : undefined;
  return {
    title,
    ...(tag === undefined ? {} : { tag }),
    caption: [
      caption,
      set ?? "",
      fact.kind === "received-otherwise" ? `${texts("received-otherwise")}: ${String(fact.what.how ?? "")}` : "",
    ]
      .filter((part) => part !== "")
      .join(" · "),
    photo,
    ...(known?.rendition === undefined || missing !== undefined ? {} : { rendition: known.rendition }),
    ...(missing === undefined ? {} : { missing }),
    ...(known?.width === undefined ? {} : { width: known.width }),
    ...(known?.height === undefined ? {} : { height: known.height }),
    when: [whenText(context, fact), known?.taken === undefined ? "" : `${texts("camera-says")} ${known.taken}`]
      .filter((part) => part !== "")
      .join("; "),
    place: known?.place === undefined ? texts("no-position") : texts(known.place),
    lookedAt: lookedAt(context, fact),
    alt: [title, caption].filter((part) => part !== "").join(". "),
    ...(number === undefined ? {} : { number }),
  };
}

function cautionsOf(context: Context, step: Step): readonly string[] {
  const { sheet, sayer } = context;
  return step.cautions.map((id) => sayer.words(sheet.cautions.find((c) => c.id === id)?.text)).filter((caution) => caution !== "");
}

const pictureKinds: ReadonlySet<string> = new Set(["picture-taken", "received-otherwise"]);

function notesOf(context: Context, step: Step): readonly string[] {
  const notes = context.state.facts.filter((f) => f.kind === "note-for-record" && f.standing === "counts" && f.what.step === step.id);
  return notes.map((f) => `${String(f.what.text ?? "")} (${context.nameOf(f)}, ${context.sayer.moment(f.at)})`);
}

/** Every step with its findings, readings as typed, pictures and notes. A step that this job does not ask is left out. */
export function stepViews(context: Context, findings: readonly Finding[]): readonly StepView[] {
  const { state, sheet } = context;
  return sheet.steps.flatMap((step) => {
    const own = findings.filter((f) => f.step === step.id);
    const entered = state.facts.filter((f) => itemIn(sheet, f)?.step === step.id);
    if (own.length === 0 && entered.length === 0) return [];
    const withItem = entered.flatMap((fact) => {
      const item = itemIn(sheet, fact);
      return item === undefined ? [] : [{ fact, item }];
    });
    return [
      {
        id: step.id,
        number: step.number,
        title: context.sayer.words(step.title),
        cautions: cautionsOf(context, step),
        findings: own.map((finding) => findingView(context, finding)),
        readings: withItem.filter(({ fact }) => fact.kind === "reading-taken").map(({ fact, item }) => readingView(context, fact, item)),
        pictures: withItem
          .filter(({ fact }) => pictureKinds.has(fact.kind) && fact.standing === "counts")
          .map(({ fact, item }) => pictureView(context, fact, item)),
        notes: notesOf(context, step),
      },
    ];
  });
}

/** Which of the sheet's switches this job has on, as the design says. */
export function switchesOn(state: JobState, sheet: ToleranceSheet): readonly string[] {
  const design = designFor(state, undefined);
  return sheet.switches.filter((s) => switchOn(sheet, design, s.id)).map((s) => s.id);
}
