export { buildApp } from "./app.ts";
export { bundleEdge, type EdgeEntry } from "./edge.ts";
