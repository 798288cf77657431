export { runningIn } from "./left-over.ts";
export { migrate } from "./migrations.ts";
export { type Secrets, secretsIn } from "./secrets.ts";
export {
  BUCKET,
  type ChildName,
  childNames,
  type ProcessName,
  REGION,
  RESTORED,
  type Stack,
  type StackOptions,
  startStack,
} from "./stack.ts";
export { startStore } from "./store-server.ts";
export { startUntilStopped } from "./until-stopped.ts";
export { wipeErased } from "./wiped.ts";
