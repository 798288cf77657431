import { type CardFor, type CardLayout, cardLayout, cardSteps, cardText, factsOf, type JobState } from "../job/index.ts";
import type { Digest, Json } from "../ledger/index.ts";
import { type Outcome, ok } from "../outcome/index.ts";
import type { CardPlace } from "../photo/index.ts";
import type { CardsPageModel, CardView, PrintedCodeView, RulerMarkView } from "./cards-page-model.ts";
import { sayCards } from "./say-cards.ts";
import { jobSettings } from "./settings.ts";

export interface CardsPageInput {
  readonly company: string;
  readonly job: string;
  readonly state: JobState;
  /** The company's settings now: name, paper. What the job itself says of zone, language and units comes first. */
  readonly settings: Json;
  readonly digest: Digest;
}

/** As much of a name as stands between the codes; whoever typed more knows it by its beginning. */
const LONGEST = 90;
const shortened = (text: string): string =>
  [...text].length <= LONGEST
    ? text
    : `${[...text]
        .slice(0, LONGEST - 1)
        .join("")
        .trimEnd()}…`;

const millimetres = (micrometres: number): number => micrometres / 1000;
const INCH_MM = 25.4;
/** Marks of every 5 mm on the left, of every 1/8 in on the right; the longer ones bear their number. */
const rulerMarks = (length: number): readonly RulerMarkView[] => [
  ...Array.from({ length: Math.floor(length / 5) + 1 }, (_, n): RulerMarkView => {
    const at = 5 * n;
    return { side: "left", at, long: at % 50 === 0 ? 4 : at % 10 === 0 ? 2.6 : 1.6, label: at % 50 === 0 ? `${at}` : "" };
  }),
  ...Array.from({ length: Math.round((8 * length) / INCH_MM) + 1 }, (_, n): RulerMarkView => {
    const at = Math.round((INCH_MM / 8) * n * 1000) / 1000;
    return { side: "right", at, long: n % 8 === 0 ? 4 : n % 4 === 0 ? 2.6 : 1.6, label: n % 8 === 0 ? `${n / 8}` : "" };
  }),
];

/** The four codes of a card; refuses where an id cannot be put into one. */
async function codesOf(
  digest: Digest,
  card: CardFor,
  paper: CardPlace["paper"],
  { codes }: CardLayout,
): Promise<Outcome<PrintedCodeView[]>> {
  const views: PrintedCodeView[] = [];
  for (const [place, { corners }] of codes.entries()) {
    const text = await cardText(digest, card, { paper, place: place as CardPlace["place"] });
    if (!text.ok) return text;
    const [{ x, y }, { x: end }] = corners;
    views.push({ text: text.value, x: millimetres(x), y: millimetres(y), side: millimetres(end - x) });
  }
  return ok(views);
}

/**
 * The view model of a job's cards: one for each step of its tolerance sheet that asks for a picture, and one for any step. A
 * function of ids, ledger and settings: the same card is the same whenever it is printed.
 */
export async function cardsPageModel({ company, job, state, settings: given, digest }: CardsPageInput): Promise<Outcome<CardsPageModel>> {
  const { language, paper, name } = jobSettings(state, given);
  const say = sayCards(language);
  const layout = cardLayout(paper);
  const steps = state.sheet === undefined ? [] : cardSteps(state.sheet);
  const named: readonly (Omit<CardView, "codes"> & { readonly id?: string })[] = [
    ...steps.map(({ id, number, title }) => ({
      id,
      step: say("step", { number: `${number}` }),
      title: shortened(title[language] ?? title.en),
      mark: `${number}`,
    })),
    { step: say("any-step"), title: "", mark: "" },
  ];
  const cards: CardView[] = [];
  for (const { id, ...view } of named) {
    const codes = await codesOf(digest, { company, job, ...(id === undefined ? {} : { step: id }) }, paper, layout);
    if (!codes.ok) return codes;
    cards.push({ ...view, codes: codes.value });
  }
  const title = shortened(state.opened?.title ?? job);
  const { ruler } = layout;
  return ok({
    format: 1,
    language,
    paper,
    width: millimetres(layout.width),
    height: millimetres(layout.height),
    words: { kind: say("kind"), codes: say("codes") },
    company: shortened(name),
    title: {
      document: say("document", { job: title }),
      job: title,
      ...(state.opened?.ownNumber === undefined ? {} : { ownNumber: shortened(state.opened.ownNumber) }),
      at: factsOf(state, "job-opened")[0]?.at ?? 0,
    },
    how: [say("how.flat"), say("how.near"), say("how.agrees"), say("how.ruler"), say("how.caution")],
    ruler: {
      x: millimetres(ruler.x),
      y: millimetres(ruler.y),
      length: millimetres(ruler.length),
      marks: rulerMarks(millimetres(ruler.length)),
    },
    cards,
  });
}
