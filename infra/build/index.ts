export { buildApp } from "./app.ts";
export { bundleEdge, bundleEntry, type EdgeEntry } from "./edge.ts";
export { project } from "./project.ts";
export { type Ran, runTool } from "./run.ts";
