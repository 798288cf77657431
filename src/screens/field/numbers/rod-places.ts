import {
  type About,
  askedItems,
  type Instance,
  itemNamed,
  type JobState,
  type SetOutCard,
  type ToleranceSheet,
} from "../../../job/index.ts";
import type { JobNow } from "../../parts/job-now.ts";
import { jobPath } from "../../parts/place.ts";
import { namesPath, takePath } from "../paths.ts";

type SetOutPlace = SetOutCard["rows"][number]["place"];

/** What a rod is held on: a place that is set out, the height mark, the point at finished grade. */
export type RodOn = SetOutPlace | "height mark" | "finished grade";

const slugOf = (on: RodOn): string => on.replaceAll(" ", "-");

export const rodNames = [
  "height mark",
  "finished grade",
  "dug bottom",
  "top of bed",
  "rim",
  "wall fitting",
  "spillway lip",
  "liner edge",
] as const satisfies readonly RodOn[];

/** What an address names. */
export const rodOfAddress = (slug: string): RodOn | undefined => rodNames.find((name) => slugOf(name) === slug);

/** Where the rod is read on it, in the set-up in use. */
export const rodPath = (job: string, on: RodOn): string => jobPath(job, "set-out", slugOf(on));
export const newSetUpPath = (job: string): string => jobPath(job, "set-out", "new");

/** What is read there now: once something is covered, the readings that are for afterwards, where the tolerance sheet has any. */
export function rodInstances({ state, clearances }: Pick<JobNow, "state" | "clearances">, on: RodOn): readonly Instance[] {
  if (state.sheet === undefined) return [];
  const all = askedItems(state, state.sheet).filter(({ item }) => (on === "height mark" ? item.heightMark === true : item.setOut === on));
  const covered = new Set(clearances.filter((one) => one.covered !== undefined).map(({ covering }) => covering));
  const afterwards = all.filter(({ item }) => item.needsHidden !== undefined && covered.has(item.needsHidden));
  return afterwards.length > 0 ? afterwards : all.filter(({ item }) => item.needsHidden === undefined);
}

/** The one to read next: the first that was not read in the set-up in use, else the last again. */
export function nextRead(
  state: Pick<JobState, "facts">,
  { mark, rows }: Pick<SetOutCard, "mark" | "rows">,
  on: RodOn,
  instances: readonly Instance[],
): Instance | undefined {
  const entries = new Set([
    ...(on === "height mark" ? (mark?.entries ?? []) : []),
    ...rows.filter(({ place }) => place === on).flatMap(({ readings }) => readings.flatMap((one) => one.entries)),
  ]);
  const read = state.facts.filter(({ id }) => entries.has(id));
  return instances.find(({ item, tag }) => !read.some(({ what }) => what.item === item.id && what.tag === tag)) ?? instances.at(-1);
}

/** Where what is missing is entered: rod readings in the set-up in use, the rest on the page of its own. */
export function aboutPath(job: string, sheet: ToleranceSheet | undefined, { item: id, check, tag }: About): string | undefined {
  const first = id ?? sheet?.checks.find((one) => one.id === check)?.items[0];
  if (sheet === undefined || first === undefined) return undefined;
  if (sheet.tagSets.some((set) => set.id === first)) return namesPath(job, first);
  const item = itemNamed(sheet, first);
  if (item?.heightMark === true) return rodPath(job, "height mark");
  return item?.setOut === undefined ? takePath(job, first, tag) : rodPath(job, item.setOut);
}
