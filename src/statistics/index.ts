export { normalDensity, normalDistribution, normalQuantile } from "./normal.ts";
