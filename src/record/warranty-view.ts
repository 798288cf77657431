import { factsOf, type JobState } from "../job/index.ts";
import type { CalendarDay } from "../units/index.ts";
import { type Cover, coversOf, dayAt, handedOver, standingOn, warrantyClocks } from "../warranty/index.ts";
import type { Context } from "./context.ts";
import type { LabelledText, RecordModel } from "./model.ts";
import { makeWarrantySayer } from "./say-warranty.ts";

interface Warranted {
  readonly covers: readonly Cover[];
  readonly today: CalendarDay;
}

/** The covers of a job as they stand when its record is issued. */
function warranted({ state, settings }: Context, issuedAt: number): Warranted {
  return { covers: coversOf(warrantyClocks(state), settings.warranty), today: dayAt(issuedAt, settings.zone) };
}

export function warrantyView(context: Context, issuedAt: number): RecordModel["warranty"] {
  const { settings, texts, language } = context;
  const { covers, today } = warranted(context, issuedAt);
  const say = makeWarrantySayer(language);
  const terms = covers.map((cover) => ({
    part: cover.part,
    lasts: cover.kept ? say.standing("kept, no cover") : say.lasts(cover.months),
    starts: cover.kept ? "" : say.starts(cover),
    ends: cover.kept ? "" : say.ends(cover),
    conditions: [cover.conditions ?? "", ...say.conditions(cover, today).map((sentence) => `${sentence}.`)]
      .filter((sentence) => sentence !== "")
      .join(" "),
  }));
  const own = settings.warranty.text[language];
  return { terms, text: own.length > 0 || terms.length > 0 ? own : [texts("warranty-none")], note: texts("warranty-note") };
}

/** Parts that are still to be registered, as things left to do. */
export function registrationViews(context: Context, issuedAt: number): RecordModel["leftToDo"] {
  const { covers, today } = warranted(context, issuedAt);
  const say = makeWarrantySayer(context.language);
  return covers.flatMap((cover) => {
    const is = standingOn(cover, today).registration;
    if (cover.registration === undefined || is === undefined || is === "done" || is === "done late") return [];
    const by = `${context.settings.name}, ${say.day(cover.registration.by)}`;
    return [
      { text: say.text("left-register", { part: cover.part, whom: cover.registration.with }), by, state: context.texts("left-open") },
    ];
  });
}

/** The text that was shown, by its language and digest; nothing where none was kept. */
function shownText({ language }: Context, what: { language?: string; textDigest?: string }): readonly LabelledText[] {
  const say = makeWarrantySayer(language);
  if (what.textDigest === undefined) return [];
  const of = what.language === "es" ? say.text("language-es") : what.language === "en" ? say.text("language-en") : (what.language ?? "");
  return [{ label: say.text("label-text", { language: of }), text: say.text("text-digest", { digest: what.textDigest }) }];
}

function signedViews(context: Context): readonly LabelledText[] {
  const { state, sayer, texts } = context;
  return factsOf(state, "signed").flatMap((signed) => [
    { label: texts("signature-by"), text: context.nameOf(signed) },
    { label: texts("signature-relation"), text: signed.what.relation },
    { label: texts("signature-when"), text: sayer.moment(signed.at) },
    ...shownText(context, signed.what),
  ]);
}

function deliveredViews(context: Context): readonly LabelledText[] {
  const say = makeWarrantySayer(context.language);
  return factsOf(context.state, "delivered-unsigned").flatMap((fact) => {
    const { how, day, to, because, objection } = fact.what;
    const said = say.text("handed-delivered without signature", { day: context.day(day), because: say.text(`because-${because}`) });
    return [
      { label: say.text("label-handed"), text: said },
      { label: say.text("label-how"), text: how },
      { label: say.text("label-to"), text: to },
      ...(objection === undefined ? [] : [{ label: say.text("label-objection"), text: objection }]),
      ...shownText(context, fact.what),
    ];
  });
}

function usedViews(context: Context, issuedAt: number): readonly LabelledText[] {
  const { state, settings, language } = context;
  const over = handedOver(warrantyClocks(state), settings.warranty);
  const say = makeWarrantySayer(language);
  return over?.how === "accepted by use"
    ? [{ label: say.text("label-handed"), text: say.handed(over, dayAt(issuedAt, settings.zone)) }]
    : [];
}

function refusedViews({ state, texts }: Context): readonly LabelledText[] {
  const declined = factsOf(state, "declined").map(({ what }) => ({ label: texts("signature-declined"), text: what.objection }));
  const missed = factsOf(state, "not-reached").map(({ what }) => ({ label: texts("signature-not-reached"), text: what.how }));
  return [...declined, ...missed];
}

const isSigned = (state: JobState): boolean => factsOf(state, "signed").length > 0;

/** How it was handed over: every signature, delivery without one, objection and use that was entered. */
export function signatureView(context: Context, issuedAt: number): readonly LabelledText[] {
  const { state, texts } = context;
  const all = [...signedViews(context), ...deliveredViews(context), ...usedViews(context, issuedAt), ...refusedViews(context)];
  return isSigned(state) || all.length > 0 ? all : [{ label: texts("signature-by"), text: texts("signature-none") }];
}
