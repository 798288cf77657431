import { type JobState, jobState, type ToleranceSheet } from "#core/job/index.ts";
import { type CardsPageModel, cardsPageModel } from "#core/record/index.ts";
import { digest } from "#infra/node-digest.ts";
import { companySettings } from "./design-page.ts";
import { bench, book, pictureItem } from "./job.ts";

/** Three steps, two of which ask for a picture. */
export const threeSteps = bench({
  steps: [
    { id: "hole", number: 2, title: { en: "Hole and bed", es: "Hoyo y cama" }, cautions: [] },
    { id: "line", number: 5, title: { en: "Line run", es: "Tendido" }, cautions: [] },
    { id: "basin", number: 11, title: { en: "Basin set", es: "Depósito colocado" }, cautions: [] },
  ],
  items: [pictureItem("hole-seen", { step: "hole" }), pictureItem("basin-seen", { step: "basin" })],
});

export interface CardsAsked {
  readonly paper?: "letter" | "a4";
  readonly language?: "en" | "es";
  readonly sheet?: ToleranceSheet;
  readonly title?: string;
}

function stateOf({ language = "en", sheet = threeSteps, title = "Courtyard fall" }: CardsAsked): JobState {
  const { entries, versions } = book(sheet).ledger();
  const opened = { title, ownNumber: "26-118", zone: "America/New_York", language, units: "inch" };
  return jobState({ versions, entries: entries.map((entry) => (entry.kind === "job-opened" ? { ...entry, what: opened } : entry)) });
}

/** The cards of the job `job-one` of the company `kettle`. */
export async function cardsPage(asked: CardsAsked = {}): Promise<CardsPageModel> {
  const settings = { ...companySettings, paper: asked.paper ?? "letter" };
  const made = await cardsPageModel({ company: "kettle", job: "job-one", state: stateOf(asked), settings, digest });
  if (!made.ok) throw new Error(JSON.stringify(made.refusal));
  return made.value;
}
