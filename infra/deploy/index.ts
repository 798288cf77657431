export { type CostInputs, costsShape, type MonthCosts, monthCosts } from "./costs.ts";
export { readEnvironments } from "./environments.ts";
export { assets, asWritten, bindings, compatibility, cron, queue, queueNames } from "./platform.ts";
