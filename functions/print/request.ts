import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { isSha, type MessageAsked, type PrintAttachment, type PrintPicture, type PrintRequest } from "#functions/shared/index.ts";

type Kind = PrintRequest["kind"];
/** Of what is drawn. */
type DocumentKind = Exclude<Kind, "sealing" | "paper">;
type Json = Readonly<Record<string, unknown>>;

const relationships = ["Data", "Source", "Supplement", "Unspecified"];
/** Where a document of each kind may be put. */
const KEYS: Readonly<Record<Kind, RegExp>> = {
  record: /^[A-Za-z0-9_-]{1,64}\/records\/[A-Za-z0-9_./-]{1,200}$/,
  sealing: /^[A-Za-z0-9_-]{1,64}\/records\/[A-Za-z0-9_./-]{1,200}$/,
  paper: /^[A-Za-z0-9_-]{1,64}\/papers\/[0-9a-f]{64}$/,
  "design-check": /^[A-Za-z0-9_-]{1,64}\/designs\/[A-Za-z0-9_./-]{1,200}$/,
  cards: /^[A-Za-z0-9_-]{1,64}\/cards\/[A-Za-z0-9_./-]{1,200}$/,
  report: /^[A-Za-z0-9_-]{1,64}\/reports\/[A-Za-z0-9_./-]{1,200}$/,
};
const RENDITION_KEY = /^[A-Za-z0-9_-]{1,64}\/renditions\/[A-Za-z0-9_./-]{1,200}$/;
const FILE_NAME = /^[A-Za-z0-9_.-]{1,80}$/;

const isObject = (value: unknown): value is Json => typeof value === "object" && value !== null && !Array.isArray(value);
const isKind = (value: unknown): value is Kind => typeof value === "string" && Object.hasOwn(KEYS, value);

/**
 * Reads the body of `POST /print`. Where it comes from is the token's matter; this guards the store's folders, and finds a
 * model of another kind or format before the templates do. All keys lie in one company's folder, each kind in its own.
 */
export function readPrintRequest(body: Uint8Array): Outcome<PrintRequest> {
  const wrong = (place: string) => refuse("request-shape", place);
  let parsed: unknown;
  try {
    parsed = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(body));
  } catch {
    return wrong("body");
  }
  if (!isObject(parsed)) return wrong("body");
  const { kind, model, key } = parsed;
  if (!isKind(kind)) return wrong("body/kind");
  if (typeof key !== "string" || !KEYS[kind].test(key) || key.includes("..")) return wrong("body/key");
  const fault = kind === "paper" ? undefined : kind === "sealing" ? sealingFault(parsed) : documentFault(kind, parsed, model);
  return fault === undefined ? ok(parsed as unknown as PrintRequest) : wrong(fault);
}

const documentFault = (kind: DocumentKind, request: Json, model: unknown): string | undefined =>
  isObject(model) && model.format === 1 && isObject(model.title) ? faults[kind](request, model, model.title) : "body/model";

const sealingFault = ({ attachments, issuedAt }: Json): string | undefined => {
  if (!Number.isSafeInteger(issuedAt)) return "body/issuedAt";
  return Array.isArray(attachments) && attachments.length > 0 && attachments.every(isAttachment) ? undefined : "body/attachments";
};

/** The place of what is wrong with a request of each kind. */
const faults: Readonly<Record<DocumentKind, (request: Json, model: Json, title: Json) => string | undefined>> = {
  record: ({ key, photos, attachments }, model, title) => {
    if (!Array.isArray(model.steps)) return "body/model";
    if (!Number.isSafeInteger(title.issuedAt)) return "body/model/title/issuedAt";
    if (!isObject(photos)) return "body/photos";
    const company = String(key).slice(0, String(key).indexOf("/") + 1);
    for (const [photo, pictures] of Object.entries(photos)) {
      const fits = isSha(photo) && Array.isArray(pictures) && pictures.length > 0 && pictures.every((one) => isPicture(one, company));
      if (!fits) return `body/photos/${photo.slice(0, 64)}`;
    }
    return Array.isArray(attachments) && attachments.every(isAttachment) ? undefined : "body/attachments";
  },
  "design-check": (_request, model, title) => {
    if (!Array.isArray(model.questions)) return "body/model";
    return Number.isSafeInteger(title.at) ? undefined : "body/model/title/at";
  },
  cards: (_request, model, title) => {
    if (!Array.isArray(model.cards)) return "body/model";
    return Number.isSafeInteger(title.at) ? undefined : "body/model/title/at";
  },
  report: (_request, model, title) => {
    if (!Array.isArray(model.answers) || !Array.isArray(model.notes)) return "body/model";
    return Number.isSafeInteger(title.at) ? undefined : "body/model/title/at";
  },
};

/** A rendition in the folder of this company. */
const isPicture = (value: unknown, company: string): value is PrintPicture =>
  isObject(value) &&
  typeof value.key === "string" &&
  RENDITION_KEY.test(value.key) &&
  !value.key.includes("..") &&
  value.key.startsWith(company) &&
  (value.bytes === undefined || (Number.isSafeInteger(value.bytes) && (value.bytes as number) > 0)) &&
  (value.sha256 === undefined || (typeof value.sha256 === "string" && isSha(value.sha256)));

const isAttachment = (value: unknown): value is PrintAttachment =>
  isObject(value) &&
  typeof value.name === "string" &&
  FILE_NAME.test(value.name) &&
  typeof value.type === "string" &&
  typeof value.text === "string" &&
  relationships.includes(value.relationship as string);

/** Reads the body of `POST /message`: only the edge's token opens it, and the edge has judged its parts. */
export function readMessageRequest(body: Uint8Array): Outcome<MessageAsked> {
  let parsed: unknown;
  try {
    parsed = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(body));
  } catch {
    return refuse("request-shape", "body");
  }
  const { message, send } = isObject(parsed) ? parsed : {};
  const whole =
    isObject(message) &&
    isObject(message.to) &&
    [message.to.address, message.subject, message.text, message.id].every((text) => typeof text === "string") &&
    Number.isSafeInteger(message.at);
  return whole && typeof send === "boolean" ? ok(parsed as unknown as MessageAsked) : refuse("request-shape", "body/message");
}
