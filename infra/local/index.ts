export { type ChildName, childNames, type ProcessName, type Stack, type StackOptions, startStack } from "./stack.ts";
