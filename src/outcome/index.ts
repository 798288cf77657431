export { type CheckingCode, checkingCodes, type RefusalCode, refusalCodes } from "./codes.ts";
export { type Figure, type Figures, type Outcome, ok, type Refusal, refuse } from "./outcome.ts";
