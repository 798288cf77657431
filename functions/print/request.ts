import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { isSha, type PrintAttachment, type PrintRequest } from "#functions/shared/index.ts";

const relationships = ["Data", "Source", "Supplement", "Unspecified"];
const KEY = /^[A-Za-z0-9_-]{1,64}\/records\/[A-Za-z0-9_./-]{1,200}$/;
const RENDITION_KEY = /^[A-Za-z0-9_-]{1,64}\/renditions\/[A-Za-z0-9_./-]{1,200}$/;
const FILE_NAME = /^[A-Za-z0-9_.-]{1,80}$/;

type Json = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Json => typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * Reads the body of `POST /print`. Where it comes from is the token's matter; this guards the store's folders, and finds a
 * model of another format before the templates do. All keys lie in one company's folder.
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
  const { model, key, photos, attachments } = parsed;
  if (!isObject(model) || model.format !== 1 || !isObject(model.title) || !Array.isArray(model.steps)) return wrong("body/model");
  if (!Number.isSafeInteger(model.title.issuedAt)) return wrong("body/model/title/issuedAt");
  if (typeof key !== "string" || !KEY.test(key) || key.includes("..")) return wrong("body/key");
  if (!isObject(photos)) return wrong("body/photos");
  const company = key.slice(0, key.indexOf("/") + 1);
  for (const [photo, rendition] of Object.entries(photos)) {
    const fits = isSha(photo) && typeof rendition === "string" && RENDITION_KEY.test(rendition) && !rendition.includes("..");
    if (!fits || !(rendition as string).startsWith(company)) return wrong(`body/photos/${photo.slice(0, 64)}`);
  }
  if (!Array.isArray(attachments) || !attachments.every(isAttachment)) return wrong("body/attachments");
  return ok(parsed as unknown as PrintRequest);
}

const isAttachment = (value: unknown): value is PrintAttachment =>
  isObject(value) &&
  typeof value.name === "string" &&
  FILE_NAME.test(value.name) &&
  typeof value.type === "string" &&
  typeof value.text === "string" &&
  relationships.includes(value.relationship as string);
