export { assets, bindings, compatibility, cron, keepNames, queue, queueNames } from "./platform.ts";
