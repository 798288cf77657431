import type { Json } from "../../../ledger/index.ts";
import type { CalendarDay } from "../../../units/index.ts";
import {
  type Cover,
  coversOf,
  dayAt,
  type HandedOver,
  handedOver,
  readTerms,
  type WarrantyClocks,
  type WarrantyTerms,
  warrantyClocks,
} from "../../../warranty/index.ts";
import type { CompanyView } from "../../../wire/index.ts";
import { ask } from "../../parts/edge.ts";
import type { JobNow } from "../../parts/job-now.ts";
import { useNews } from "../../parts/news.ts";

export interface Warranted {
  readonly clocks: WarrantyClocks;
  readonly terms: WarrantyTerms;
  readonly covers: readonly Cover[];
  readonly over: HandedOver | undefined;
  /** Where the site is, by this machine's clock. */
  readonly today: CalendarDay;
}

/** The warranty of a job by the terms that it took over, else by the company's own now; undefined until those are read. */
export function useWarranted({ state }: JobNow): Warranted | undefined {
  const news = useNews("company", () => ask<CompanyView>("/api/company"));
  return warrantedBy(state, news.value);
}

/** The same of any job, once the company's settings are read. */
export function warrantedBy(state: JobNow["state"], read: CompanyView | undefined): Warranted | undefined {
  const clocks = warrantyClocks(state);
  const company = read?.settings.content.warranty as Json | undefined;
  if (clocks.ownTerms === undefined && read === undefined) return undefined;
  const terms = readTerms(clocks.ownTerms ?? company);
  return {
    clocks,
    terms,
    covers: coversOf(clocks, terms),
    over: handedOver(clocks, terms),
    today: dayAt(Date.now(), clocks.zone),
  };
}
