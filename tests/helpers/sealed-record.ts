import { createHash } from "node:crypto";
import { CompactSign, type CryptoKey, calculateJwkThumbprint, exportJWK, generateKeyPair } from "jose";
import { type JobLedger, RULES } from "#core/job/index.ts";
import {
  chain,
  contentDigest,
  customerEdition,
  genesis,
  headAfter,
  type Json,
  type Ledger,
  type LedgerEntry,
  seal as sealEntry,
} from "#core/ledger/index.ts";
import {
  fileNames,
  type Judging,
  judge,
  type KeyList,
  type Means,
  printedTexts,
  type RecordFile,
  type RecordSeal,
  rulesDigests,
  sealedFindings,
} from "#core/proof/index.ts";
import { filesOf, type RecordModel, recordModel } from "#core/record/index.ts";
import { digest } from "#infra/node-digest.ts";
import { defaultSheet } from "#infra/sheets/default-sheet.ts";
import { meansWith } from "#infra/verify/means.ts";
import { afterTwoDays, twoDayLedger } from "../samples/two-day-job.ts";

export const sha256 = (content: string | Uint8Array): string => createHash("sha256").update(content).digest("hex");
const taken = <T>(outcome: { ok: true; value: T } | { ok: false; refusal: unknown }): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
};
const encoded = (text: string): Uint8Array<ArrayBuffer> => Uint8Array.from(new TextEncoder().encode(text));

/** A job's entries in a real chain, the last few with names; salts come from their place, so that it is the same every time. */
async function chained({ entries, versions }: JobLedger): Promise<Ledger> {
  let head = genesis;
  const list: LedgerEntry[] = [];
  for (const [place, { id, kind, author, run, made, what }] of entries.entries()) {
    if (what === undefined) throw new Error(`${id} says nothing`);
    const who = place % 20 === 0 ? { name: "Robin Vale" } : undefined;
    const contents = who === undefined ? { what } : { what, who };
    const salts = { what: sha256(`what ${place}`), ...(who === undefined ? {} : { who: sha256(`who ${place}`) }) };
    const { sealed, body } = taken(await sealEntry(digest, { job: "job-one", id, kind, author, run, made, contents, salts }));
    const envelope = chain(head, sealed, made, made + 1000);
    list.push({ envelope, body });
    head = taken(await headAfter(digest, envelope));
  }
  const attached = Object.entries(versions).map(([of, content]) => ({ kind: "sheet", digest: of, content }));
  return { format: 1, job: "job-one", head, entries: list, versions: attached };
}

export interface Signer {
  readonly x: string;
  readonly kid: string;
  readonly sign: (payload: string) => Promise<string>;
}

export async function newSigner(): Promise<Signer> {
  const { privateKey, publicKey } = await generateKeyPair("EdDSA", { crv: "Ed25519", extractable: true });
  const { x = "" } = await exportJWK(publicKey);
  const kid = await calculateJwkThumbprint({ kty: "OKP", crv: "Ed25519", x });
  return { x, kid, sign: (payload) => signedBy(privateKey, { x, kid }, payload) };
}

const signedBy = (key: CryptoKey, { x, kid }: { x: string; kid: string }, payload: string): Promise<string> =>
  new CompactSign(new TextEncoder().encode(payload))
    .setProtectedHeader({ alg: "EdDSA", typ: "asburied-seal", kid, jwk: { kty: "OKP", crv: "Ed25519", x } })
    .sign(key);

export interface SealedSample {
  readonly file: RecordFile;
  readonly ledger: Ledger;
  readonly model: RecordModel;
  readonly seal: RecordSeal;
  readonly signer: Signer;
  readonly keys: KeyList;
}

export const COMPANY = { company: "company-one", name: "Stillwater Yard Works" };

/**
 * A sealed record of the two-day job, as it would be read out of its PDF. The pages are the view model's texts one after another,
 * thirty to a page.
 */
export async function sealedSample({
  edition = "customer",
  alter = (ledger) => ledger,
  entries = Number.POSITIVE_INFINITY,
}: {
  readonly edition?: "customer" | "company";
  /** What is attached instead of the edition. */
  readonly alter?: (edition: Ledger) => Ledger;
  /** How many entries of the job there are by then. */
  readonly entries?: number;
} = {}): Promise<SealedSample> {
  const sheet = defaultSheet();
  const sheetDigest = taken(await contentDigest(digest, sheet as unknown as Json));
  const job = twoDayLedger(sheet, { order: "as listed", sheetDigest });
  const whole = await chained({ ...job, entries: job.entries.slice(0, entries) });
  const ledger = alter(edition === "company" ? whole : customerEdition(whole, { wholeBodies: ["note-for-office"] }));
  const photos = whole.entries.flatMap(({ body }) => {
    const { photo } = ((body.what as { content?: { photo?: string } }).content ?? {}) as { photo?: string };
    return photo === undefined ? [] : [photo];
  });
  const known = Object.fromEntries(photos.map((photo) => [photo, { rendition: `company-one/renditions/${photo}/print.jpg` }]));
  const model = recordModel({
    ledger: whole,
    attached: ledger,
    edition,
    version: 1,
    issuedAt: afterTwoDays,
    settings: { name: COMPANY.name, zone: "America/New_York", units: "inch", language: "en" },
    people: {},
    photos: known,
  });
  const pages = pagesOf(model);
  const pictures = Object.fromEntries(filesOf(model).map(({ photo }) => [photo, sha256(`print ${photo}`)]));
  const files = {
    [fileNames.findings]: JSON.stringify(sealedFindings(judge(whole, afterTwoDays), judge(ledger, afterTwoDays))),
    [fileNames.ledger]: JSON.stringify(ledger),
    [fileNames.model]: JSON.stringify(model),
    [fileNames.pages]: JSON.stringify({ format: 1, pages }),
  };
  const seal: RecordSeal = {
    format: 1,
    company: COMPANY.company,
    job: "job-one",
    record: "record-one",
    version: 1,
    edition,
    issuedAt: afterTwoDays,
    head: ledger.head,
    rules: { version: RULES, digest: rulesDigests[RULES] ?? "" },
    modelDigest: taken(await contentDigest(digest, model as unknown as Json)),
    files: Object.fromEntries(Object.entries(files).map(([name, text]) => [name, sha256(text)])) as RecordSeal["files"],
    photos: pictures,
  };
  const signer = await newSigner();
  const attached = { ...files, [fileNames.seal]: await signer.sign(JSON.stringify(seal)) };
  return {
    file: {
      files: new Map(Object.entries(attached).map(([name, text]) => [name, encoded(text)])),
      pages,
      pictures: Object.values(pictures),
    },
    ledger,
    model,
    seal,
    signer,
    keys: { ...COMPANY, keys: [{ x: signer.x }] },
  };
}

const PER_PAGE = 30;

function pagesOf(model: RecordModel): readonly string[] {
  const texts = printedTexts(model).map(({ text }) => text.replace(/\s+/g, " ").trim());
  return Array.from({ length: Math.ceil(texts.length / PER_PAGE) }, (_, page) =>
    [`Page ${page + 1}`, ...texts.slice(page * PER_PAGE, (page + 1) * PER_PAGE)].join(" "),
  );
}

/** Checks as on Node, with this program's own judging in the place of the built file where `own` says so. */
export const means = (keys: readonly KeyList[] = [], own?: Judging): Means => {
  const usual = meansWith(keys);
  if (own === undefined) return usual;
  return { ...usual, rules: async () => ({ ok: true, value: { digest: rulesDigests[RULES] ?? "", judging: own } }) };
};

/** The file with one of its attached files written anew. */
export function withFile(file: RecordFile, name: string, change: (text: string) => string): RecordFile {
  const text = new TextDecoder().decode(file.files.get(name));
  const changed = change(text);
  if (changed === text) throw new Error(`nothing was changed in ${name}`);
  return { ...file, files: new Map([...file.files, [name, encoded(changed)]]) };
}

/** The file with a seal of its own making over whatever it holds now: what somebody with another key can do. */
export async function resealed({ file, seal }: SealedSample, signer: Signer, change: Partial<RecordSeal> = {}): Promise<RecordFile> {
  const files = Object.fromEntries(
    Object.keys(seal.files).map((name) => [name, sha256(file.files.get(name) ?? new Uint8Array())]),
  ) as RecordSeal["files"];
  const text = await signer.sign(JSON.stringify({ ...seal, files, ...change }));
  return { ...file, files: new Map([...file.files, [fileNames.seal, encoded(text)]]) };
}
