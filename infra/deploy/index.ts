export { type CostInputs, costsShape, type MonthCosts, monthCosts } from "./costs.ts";
export { readEnvironments } from "./environments.ts";
export { assets, bindings, compatibility, cron, keepNames, queue, queueNames } from "./platform.ts";
