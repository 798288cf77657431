export { coveredUntil, type Hold, type HoldReason, holdOn, holdReasons } from "./held.ts";
export { isNamedBy, isNamedIn, type Mention, mentionsIn, type Sought } from "./mentions.ts";
export {
  type Ending,
  endedBy,
  type KeptJob,
  type KeptKind,
  type KeptSite,
  keepingOf,
  keptKinds,
  NOTICE_DAYS,
  type Periods,
  type SiteKeeping,
  usualPeriods,
} from "./periods.ts";
export { endedOf, isCustomerOf, type NamedJob, type Removal, removalOf, type Withholding } from "./removal.ts";
export { type Signs, signsOf } from "./signs.ts";
