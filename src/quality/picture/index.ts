export { type PlotSize, type Plotting, plotted } from "./plotted.ts";
export { SIGN_BOX, signDrawn } from "./sign.ts";
export type * from "./view.ts";
