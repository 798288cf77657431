export { bundleEdge, type EdgeEntry } from "./edge.ts";
