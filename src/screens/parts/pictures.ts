import { factsOf, type Live } from "../../job/index.ts";
import type { Sayer } from "../../record/index.ts";
import type { JobNow } from "./job-now.ts";

/** Why there is nothing to see of a photo. */
export type Unseen = "picture-not-here" | "picture-not-read" | "picture-unreadable";

export interface PictureShown {
  readonly entry: string;
  readonly step: string;
  readonly title: string;
  readonly caption: string;
  readonly photo: string;
  /** Address of its rendition for the screen. */
  readonly address: string;
  /** What to show in its place; absent: the rendition is there. */
  readonly unseen?: Unseen;
  /** When it was made, ms. */
  readonly at: number;
  readonly looked?: "shows it" | "does not show it" | "cannot tell";
  /** Taken before what it shows was reworked or opened up again. */
  readonly earlier: boolean;
}

const kinds: ReadonlySet<string> = new Set(["picture-taken", "received-otherwise"]);
const text = (value: unknown): string => (typeof value === "string" ? value : "");

/** Why the office has nothing to show of a photo; undefined where its rendition is there. */
export function unseen(now: Pick<JobNow, "view">, photo: string): Unseen | undefined {
  const known = now.view.photos[photo];
  if (known === undefined) return "picture-not-here";
  if (known.state === "unreadable") return "picture-unreadable";
  return known.state === "stored" ? "picture-not-read" : undefined;
}

/** Where parts are blurred the address says which, so that no older rendition is shown from a browser's own store. */
export function screenAddress({ view }: Pick<JobNow, "view">, photo: string): string {
  const parts = view.photos[photo]?.blurred;
  return `/api/photos/${photo}/screen${parts === undefined ? "" : `?parts=${parts}`}`;
}

/** The newest look of a person at each picture, by the picture's entry. */
const looks = (now: JobNow): ReadonlyMap<string, PictureShown["looked"]> =>
  new Map(factsOf(now.state, "picture-looked-at").map(({ what }) => [what.picture, what.says]));

function setAside(now: JobNow, fact: Live): boolean {
  return now.state.cuts.some(
    ({ about, covering, position }) =>
      position > fact.position &&
      covering === undefined &&
      about.item === fact.what.item &&
      (about.tag === undefined || about.tag === fact.what.tag),
  );
}

/** The pictures of a job that count, in the order of the steps and then of the work. */
export function picturesOf(now: JobNow, sayer: Sayer): readonly PictureShown[] {
  const sheet = now.state.sheet;
  const looked = looks(now);
  const order = new Map(sheet?.steps.map((step, index) => [step.id, index]));
  return now.state.facts
    .filter((fact) => kinds.has(fact.kind) && fact.standing === "counts")
    .map((fact): PictureShown => {
      const item = text(fact.what.item);
      const tag = text(fact.what.tag);
      const photo = text(fact.what.photo);
      const missing = unseen(now, photo);
      const look = looked.get(fact.id);
      return {
        entry: fact.id,
        step: sheet?.items.find(({ id }) => id === item)?.step ?? "",
        title: sayer.title({ item, ...(tag === "" ? {} : { tag }) }),
        caption: text(fact.what.caption),
        photo,
        address: screenAddress(now, photo),
        ...(missing === undefined ? {} : { unseen: missing }),
        at: fact.at,
        ...(look === undefined ? {} : { looked: look }),
        earlier: setAside(now, fact),
      };
    })
    .sort((a, b) => (order.get(a.step) ?? 0) - (order.get(b.step) ?? 0) || a.at - b.at);
}
