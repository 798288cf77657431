export { forbiddenImports, sourceFiles, type Violation } from "./cruise.ts";
export { importRules, rooms } from "./rules.ts";
