import { type Clearance, clearances, type Finding, type JobState, type Words } from "#core/job/index.ts";
import { type Buried, buriedOf } from "./buried.ts";

/** What is kept of a job so that lists need read neither its ledger nor its findings. */
export interface Listed {
  readonly title: string;
  readonly ownNumber?: string;
  readonly coverings: readonly ListedCovering[];
  readonly buried: Buried;
}

interface ListedCovering {
  readonly covering: string;
  /** In the sheet's languages. */
  readonly title: Words;
  readonly done: boolean;
  readonly state: Clearance["state"];
  readonly onWord: boolean;
  /** Of each line that holds it: until when it waits for its time alone, in milliseconds; null for one that waits for something else. */
  readonly from: readonly (number | null)[];
  readonly about?: number;
}

/** @param now milliseconds; what only waits for its time is told apart when the list is read */
export function listedOf(state: JobState, found: readonly Finding[], now: number): Listed {
  const all = clearances(state, found, now);
  const titles = new Map((state.sheet?.coverings ?? []).map(({ id, title }) => [id, title]));
  return {
    title: state.opened?.title ?? "",
    ...(state.opened?.ownNumber === undefined ? {} : { ownNumber: state.opened.ownNumber }),
    coverings: all.map((clearance) => ({
      covering: clearance.covering,
      title: titles.get(clearance.covering) ?? { en: clearance.covering },
      done: clearance.covered !== undefined,
      state: clearance.state,
      onWord: clearance.onWord !== undefined,
      from: clearance.lines.map(({ from }) => from ?? null),
      ...(clearance.announced ? { about: clearance.announced.about } : {}),
    })),
    buried: buriedOf(state, found, all),
  };
}
