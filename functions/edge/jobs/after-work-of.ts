import { type Callback, callbacksOf, type JobState } from "#core/job/index.ts";
import { type WarrantyClocks, warrantyClocks } from "#core/warranty/index.ts";

/** What the register of warranties and the list of callbacks need of a job. */
export interface AfterWork {
  readonly title: string;
  readonly ownNumber?: string;
  readonly clocks: WarrantyClocks;
  readonly callbacks: readonly Callback[];
}

export const afterWorkOf = (state: JobState): AfterWork => ({
  title: state.opened?.title ?? "",
  ...(state.opened?.ownNumber === undefined ? {} : { ownNumber: state.opened.ownNumber }),
  clocks: warrantyClocks(state),
  callbacks: callbacksOf(state),
});
