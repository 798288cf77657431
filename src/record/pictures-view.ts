import { type Live, whatOf } from "../job/index.ts";
import type { Context, PhotoKnown } from "./context.ts";
import { becameOf } from "./corrections-view.ts";
import type { FindingView, PictureView, RecordModel } from "./model.ts";
import { fill } from "./speaking.ts";
import { clockText } from "./when.ts";

const FIVE_MINUTES_MS = 300_000;

/** When something was made and received; how far the phone's clock was off where that is more than five minutes. */
export function whenText({ sayer, texts }: Context, fact: Live): string {
  const { received, made } = fact.entry;
  const off = Math.abs(fact.at - made);
  return [
    `${texts("made")} ${sayer.moment(fact.at)}`,
    ...(off > FIVE_MINUTES_MS ? [fill(texts("clock-off"), { off: sayer.quantity("duration", Math.round(off)) })] : []),
    ...(received === undefined ? [] : [`${texts("received")} ${sayer.moment(received)}`]),
  ].join(", ");
}

function lookedAt(context: Context, fact: Live): string {
  const { texts } = context;
  const looked = context.lookedAt.get(fact.id);
  if (looked === undefined) return "";
  return `${texts("looked-at-by")} ${context.nameOf(looked)}, ${context.sayer.moment(looked.at)}: ${texts(`looked-${whatOf(looked, "picture-looked-at").says}`)}`;
}

/** The camera's own clock, where it says anything else than the phone did. */
function cameraText({ sayer, language, texts }: Context, fact: Live, { taken, timeless }: PhotoKnown = {}): string {
  if (taken === undefined) return timeless ? texts("camera-no-time") : "";
  const said = clockText(taken, language);
  return sayer.moment(fact.at).startsWith(`${said} `) ? texts("camera-agrees") : `${texts("camera-says")} ${said}`;
}

function missingText({ photos, texts }: Context, photo: string): string | undefined {
  const known = photos[photo];
  if (known === undefined) return texts("photo-not-here");
  if (known.unreadable) return texts("photo-cannot-be-read");
  return known.rendition === undefined ? texts("photo-not-read-yet") : undefined;
}

const joined = (parts: readonly string[], between: string): string => parts.filter((part) => part !== "").join(between);

/** From whom something came, and how. */
function howReceived({ texts, nameTyped }: Context, fact: Live): string {
  if (fact.kind !== "received-otherwise") return "";
  const from = nameTyped(fact);
  return [
    `${texts("received-otherwise")}: ${String(fact.what.how ?? "")}`,
    from === undefined ? "" : fill(texts("from"), { name: from }),
    String(fact.what.when ?? ""),
  ]
    .filter((part) => part !== "")
    .join(", ");
}

/** A photo of an entry as it prints under `title`; with the finding that it settles, where it settles one. */
export function photoView(context: Context, fact: Live, title: string, finding?: FindingView): PictureView {
  const { photos, texts, numberOf } = context;
  const photo = String(fact.what.photo ?? "");
  const known = photos[photo];
  const caption = typeof fact.what.caption === "string" ? fact.what.caption : "";
  const number = numberOf(fact.id);
  const missing = missingText(context, photo);
  const set = context.beforeRework.has(fact.id) ? texts("before-rework") : (becameOf(context, fact)?.text ?? "");
  return {
    title,
    caption: joined([caption, set, howReceived(context, fact), known?.blurred ? texts("blurred-in-part") : ""], " · "),
    photo,
    ...(known?.rendition === undefined || missing !== undefined ? {} : { rendition: known.rendition }),
    ...(missing === undefined ? {} : { missing }),
    ...(known?.width === undefined ? {} : { width: known.width }),
    ...(known?.height === undefined ? {} : { height: known.height }),
    when: joined([whenText(context, fact), cameraText(context, fact, known)], "; "),
    place: known?.place === undefined ? texts("no-position") : texts(known.place),
    lookedAt: lookedAt(context, fact),
    alt: joined([title, caption], ". "),
    ...(finding === undefined ? {} : { finding }),
    ...(number === undefined ? {} : { number }),
  };
}

/** Every picture that comes into the record's file, by its original: the company's mark, and the pictures that it prints. */
export const filesOf = (model: Pick<RecordModel, "company" | "steps" | "paperPictures">): readonly PrintedFile[] => [
  ...(model.company.mark === undefined ? [] : [model.company.mark]),
  ...picturesOf(model),
];
export type PrintedFile = Pick<PictureView, "photo" | "rendition">;

/** Every picture that the record prints, in its order. */
export const picturesOf = ({ steps, paperPictures }: Pick<RecordModel, "steps" | "paperPictures">): readonly PictureView[] => [
  ...steps.flatMap(({ pictures }) => pictures),
  ...paperPictures,
];
