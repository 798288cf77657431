export type { LeafChange } from "./differences.ts";
export { type LimitStanding, limitStanding } from "./limit-standing.ts";
export {
  type FindingMoved,
  movedToVersion,
  type VersionMove,
  type VersionOffered,
  type VersionTaken,
  versionsTaken,
} from "./moved-to-version.ts";
export { cardDifferences, type SheetDifference, type SheetList, sheetDifferences, sheetLists } from "./sheet-differences.ts";
