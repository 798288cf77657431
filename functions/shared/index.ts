export { readEnvironment, readPort, tooOldNode } from "./environment.ts";
export type { Found } from "./found.ts";
export {
  blurredKey,
  cardsKey,
  designKey,
  isCompanyId,
  isSha,
  markKeys,
  originalKey,
  paperKey,
  type RenditionName,
  recordKey,
  renditionKey,
  renditionNames,
  reportKey,
} from "./keys.ts";
export { type Listening, type Machine, machineFrom, type Running } from "./machine.ts";
export type { Mailbox, Message, MessageAnswer, MessageAsked, MessageService } from "./message-request.ts";
export {
  type PrintAnswer,
  type PrintAttachment,
  type PrintCards,
  type PrintDesignCheck,
  type PrintPaper,
  type PrintPicture,
  type PrintRecord,
  type PrintReport,
  type PrintRequest,
  type PrintSealing,
  type PrintShown,
  printRequest,
  printSubject,
} from "./print-request.ts";
export { PROBLEM_TYPE, type Problem, problem, problemResponse, type Say } from "./problem.ts";
export { SNIFF_BYTES, sniff, whyNoPhoto } from "./sniff.ts";
export { statusOf } from "./status.ts";
export { makeStore, type PutAbout, type Store, type StoredAbout, type StoreSettings } from "./store.ts";
export { OneThread, type ThreadSettings } from "./thread.ts";
export { type Audience, bearer, checkToken, issueToken, TOKEN_LIFE_MS, type TokenCheck, type TokenFor } from "./token.ts";
