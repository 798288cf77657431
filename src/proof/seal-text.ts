import { type Outcome, ok, type Refusal, refuse } from "../outcome/index.ts";
import { type RecordSeal, sealedFiles } from "./sealed-record.ts";

/** A signature that holds: what it was put under, and by which key. */
export interface Signed {
  readonly payload: string;
  /** The public key inside the seal: 32 bytes, base64url. */
  readonly x: string;
  /** Its thumbprint by RFC 7638, base64url: the name by which people compare keys. */
  readonly key: string;
}

/** Checks a compact JWS with alg EdDSA against the key in its own header. Handed in: the core has no signatures of its own. */
export type Signature = (seal: string) => Promise<Signed | undefined>;

// A signature of 64 bytes is 86 digits, of which the last holds two bits: four others would read the same and be another text.
const COMPACT = /^[A-Za-z0-9_-]+\.[A-Za-z0-9_-]+\.[A-Za-z0-9_-]{85}[AQgw]$/;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isText = (value: unknown): value is string => typeof value === "string" && value !== "";
const isDigest = (value: unknown): value is string => typeof value === "string" && /^[0-9a-f]{64}$/.test(value);
const isDigests = (value: unknown): boolean => Array.isArray(value) && value.every(isDigest);
const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && (value as number) >= 0;

/** The place in a payload of what is not as a seal has it; nothing when it is one. */
function payloadFault(payload: unknown): string | undefined {
  if (!isObject(payload) || payload.format !== 1) return "format";
  const { company, job, record, version, edition, issuedAt, head, rules, modelDigest, files, photos, papers = {} } = payload;
  const checks: readonly (readonly [string, boolean])[] = [
    ["company", isText(company)],
    ["job", isText(job)],
    ["record", isText(record)],
    ["version", isCount(version)],
    ["edition", edition === "customer" || edition === "company"],
    ["issuedAt", Number.isSafeInteger(issuedAt)],
    ["head", isObject(head) && isCount(head.number) && isDigest(head.hash)],
    ["rules", isObject(rules) && isCount(rules.version) && isDigest(rules.digest)],
    ["modelDigest", isDigest(modelDigest)],
    ["files", isObject(files) && sealedFiles.every((file) => isDigest(files[file])) && Object.keys(files).length === sealedFiles.length],
    ["photos", isObject(photos) && Object.entries(photos).every(([sha, print]) => isDigest(sha) && (print === null || isDigest(print)))],
    ["papers", isObject(papers) && Object.entries(papers).every(([sha, pictures]) => isDigest(sha) && isDigests(pictures))],
  ];
  return checks.find(([, good]) => !good)?.[0];
}

export interface ReadSeal extends Signed {
  readonly seal: RecordSeal;
}

const notUnderstood = (place: string): { readonly ok: false; readonly refusal: Refusal } => refuse("seal-not-understood", place);

/** Reads a seal and checks its signature. Refuses `seal-not-understood` and `seal-signature`. */
export async function readSeal(text: string, signature: Signature): Promise<Outcome<ReadSeal>> {
  if (!COMPACT.test(text)) return notUnderstood("seal");
  const signed = await signature(text);
  if (signed === undefined) return refuse("seal-signature", "seal");
  let payload: unknown;
  try {
    payload = JSON.parse(signed.payload);
  } catch {
    return notUnderstood("seal/payload");
  }
  const fault = payloadFault(payload);
  return fault === undefined ? ok({ ...signed, seal: payload as RecordSeal }) : notUnderstood(`seal/${fault}`);
}
