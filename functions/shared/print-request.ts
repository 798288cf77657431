import type { ReportModel } from "#core/quality/index.ts";
import type { CardsPageModel, DesignPageModel, RecordModel } from "#core/record/index.ts";
import type { MessageAsked } from "./message-request.ts";
import { issueToken, TOKEN_LIFE_MS } from "./token.ts";

/** A file put inside the PDF. `relationship` is ISO 32000-2's AFRelationship: the ledger is `Data`, its seal `Supplement`. */
export interface PrintAttachment {
  readonly name: string;
  readonly type: string;
  readonly text: string;
  readonly relationship: "Data" | "Source" | "Supplement" | "Unspecified";
  readonly description?: string;
}

/** A picture in the store. */
export interface PrintPicture {
  readonly key: string;
  /** As media wrote it; absent where that is not known. */
  readonly bytes?: number;
  readonly sha256?: string;
}

/** An as-buried record with its ledger inside. */
export interface PrintRecord {
  readonly kind: "record";
  readonly model: RecordModel;
  /** Key of the store under which the PDF is put. */
  readonly key: string;
  /** Renditions of each photo, the largest first, by the SHA-256 of the original. A picture without one is printed as missing. */
  readonly photos: Readonly<Record<string, readonly PrintPicture[]>>;
  readonly attachments: readonly PrintAttachment[];
}

/** The design check before the dig, one page. */
export interface PrintDesignCheck {
  readonly kind: "design-check";
  readonly model: DesignPageModel;
  /** Key of the store under which the PDF is put. */
  readonly key: string;
}

/** The cards of a job that lie in pictures, a page each. */
export interface PrintCards {
  readonly kind: "cards";
  readonly model: CardsPageModel;
  /** Key of the store under which the PDF is put. */
  readonly key: string;
}

/** The company owner's report of a month. */
export interface PrintReport {
  readonly kind: "report";
  readonly model: ReportModel;
  /** Key of the store under which the PDF is put. */
  readonly key: string;
}

/** Files that go into a record which is printed already: its seal names what was printed, so it can only come afterwards. */
export interface PrintSealing {
  readonly kind: "sealing";
  /** Key of the store under which the PDF lies, and is put again. */
  readonly key: string;
  /** Their names come after those that it holds, in the order of the alphabet: PDF has them sorted. */
  readonly attachments: readonly PrintAttachment[];
  /** The document's own date, milliseconds. */
  readonly issuedAt: number;
}

/** Whether a paper can be bound into a record: opened and counted, nothing printed. */
export interface PrintPaper {
  readonly kind: "paper";
  /** Key of the store under which the PDF lies. */
  readonly key: string;
}

/** `POST /print`: one of the documents that print makes, or what goes into one that it made. */
export type PrintRequest = PrintRecord | PrintDesignCheck | PrintCards | PrintReport | PrintSealing | PrintPaper;

/** Of the PDF as stored. */
export interface PrintAnswer {
  readonly sha256: string;
  readonly bytes: number;
  readonly pages: number;
  /** Photos that the model expects and that print could not get or read: printed as a box that says so. SHA-256 of the original. */
  readonly missing: readonly string[];
  /** Of a record: what a seal has to name. */
  readonly shown?: PrintShown;
}

/** What a printed record shows, read from the finished file. */
export interface PrintShown {
  /** The words of each page. */
  readonly pages: readonly string[];
  /** SHA-256 of each picture as it was printed, by the SHA-256 of its original. */
  readonly pictures: Readonly<Record<string, string>>;
  /** SHA-256 of the pictures on the pages of each paper that is bound in, by the SHA-256 of the paper. */
  readonly papers: Readonly<Record<string, readonly string[]>>;
}

/** What a token for `POST /print` opens: exactly these bytes of a body, and so its kind, its key, its photos and its model. */
export async function printSubject(body: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
  return `sha256:${Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("")}`;
}

/** A finished request: its body and its headers, with a token that is good for this body alone. `now` in milliseconds. */
export async function printRequest(
  secret: string,
  request: PrintRequest | MessageAsked,
  now: number,
): Promise<{ readonly body: Uint8Array<ArrayBuffer>; readonly headers: Readonly<Record<string, string>> }> {
  const body = new Uint8Array(new TextEncoder().encode(JSON.stringify(request)));
  const token = await issueToken(secret, { audience: "print", subject: await printSubject(body), expires: now + TOKEN_LIFE_MS });
  return { body, headers: { authorization: `Bearer ${token}`, "content-type": "application/json" } };
}
