import type { Item } from "../../job/index.ts";
import type { ToldOnPhone } from "./told.ts";

/** What a page inside a job is given: the job, and what its address says after the page's name. */
export interface JobPart {
  readonly job: string;
  readonly rest: readonly string[];
}

/** What a page is given on which one item is entered. */
export interface Taking {
  readonly job: string;
  readonly item: Item;
  readonly tag?: string;
  readonly told: ToldOnPhone;
}
