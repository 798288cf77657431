export { type Cautioned, WIRING_CAUTION } from "./caution.ts";
export { COPPER_K, type Conductor, conductors, type Stranding, type WireSize, wireSizes } from "./conductors.ts";
export { type CordReach, cordReach, SLACK_BEYOND_DEPTH } from "./cord-reach.ts";
export { type CoverBeside, coverDepthFigures, type PublishedCover, publishedCovers } from "./cover-depth.ts";
export { type BranchRun, NOTED_SHARES, type VoltageDrop, voltageDrop, voltageDropByArea } from "./voltage-drop.ts";
