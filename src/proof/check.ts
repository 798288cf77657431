import { type Digest, type Ledger, type Verification, verify } from "../ledger/index.ts";
import { type Outcome, type Refusal, refuse } from "../outcome/index.ts";
import type { RecordModel } from "../record/index.ts";
import { type Attached, attachedJson, type Decode, notJson } from "./attached.ts";
import { fileFaults, modelFaults, pageFaults, pictureFaults, sealFaults } from "./check-faults.ts";
import { checkJudging } from "./check-judging.ts";
import type { RecordCheck, RecordFile } from "./check-result.ts";
import { isModel, isSealedFindings, isSealedPages } from "./file-shapes.ts";
import type { Judging } from "./judging.ts";
import type { KeyList } from "./key-list.ts";
import { type ReadSeal, readSeal, type Signature } from "./seal-text.ts";
import { fileNames, type SealedFindings, type SealedPages } from "./sealed-record.ts";

/** What checking needs of its platform. */
export interface Means {
  readonly digest: Digest;
  readonly signature: Signature;
  readonly decode: Decode;
  /** The built file of a version of the rules with the digest of its bytes. Refuses `rules-unknown`. */
  readonly rules: (version: number) => Promise<Outcome<{ readonly digest: string; readonly judging: Judging }>>;
  /** Lists of keys that were fetched earlier or handed over. */
  readonly keys: readonly KeyList[];
}

/** What the attached files hold, each where it is there and is JSON. */
interface Inside {
  readonly ledger?: Ledger;
  readonly model?: RecordModel;
  readonly findings?: SealedFindings;
  readonly pages?: SealedPages;
}

interface Ledgered {
  readonly ledger?: Ledger;
  readonly verification: Verification;
}

async function ledgerOf(text: Attached | undefined, digest: Digest): Promise<Ledgered> {
  const none = { ok: false, withheld: [] };
  if (text === undefined) return { verification: { ...none, faults: [] } };
  if (text.value === undefined) return { verification: { ...none, faults: notJson(fileNames.ledger, text.text) } };
  const verification = await verify(digest, text.value);
  // what has the shape can be read on, with all that is wrong in it
  const shaped = !verification.faults.some(({ code }) => code === "ledger-shape" || code === "ledger-format");
  return { verification, ...(shaped ? { ledger: text.value as Ledger } : {}) };
}

/** Whose key it is, and what speaks against it. */
function owner({ x, key, seal }: ReadSeal, lists: readonly KeyList[]): { company?: RecordCheck["company"]; faults: readonly Refusal[] } {
  for (const { company, name, keys } of lists) {
    const found = keys.find((one) => one.x === x);
    if (found === undefined) continue;
    if (company !== seal.company) return { faults: [refuse("seal-company", "seal/company", { key, name }).refusal] };
    const late = found.retired !== undefined && seal.issuedAt > found.retired;
    return { company: { id: company, name }, faults: late ? [refuse("seal-key-retired", "seal/issuedAt", { key }).refusal] : [] };
  }
  return { faults: [] };
}

/** Says whether a record is as it was sealed, and if not what of it was changed. Whatever was put into the file, it never throws. */
export async function checkRecord(file: RecordFile, means: Means): Promise<RecordCheck> {
  const texts = new Map([...file.files].map(([name, bytes]) => [name, attachedJson(means.decode(bytes))]));
  const { ledger, verification } = await ledgerOf(texts.get(fileNames.ledger), means.digest);
  const base = { withheld: verification.withheld, ...(ledger && { ledger }) };
  const text = texts.get(fileNames.seal)?.text;
  if (text === undefined) {
    const missing = refuse("seal-missing", fileNames.seal).refusal;
    return { ...base, standing: "not sealed", faults: [missing, ...verification.faults] };
  }
  const read = await readSeal(text, means.signature);
  if (!read.ok) return { ...base, standing: "changed", faults: [read.refusal, ...verification.faults] };
  const { seal, key } = read.value;
  const changed = await fileFaults(file.files, seal, means.digest);
  const intact = (name: string): boolean => texts.has(name) && !changed.some(({ place }) => place === name);
  const odd: Refusal[] = [];
  const sound = <T>(name: string, has: (value: unknown) => value is T): T | undefined => {
    const value = texts.get(name)?.value;
    if (!intact(name)) return undefined;
    if (has(value)) return value;
    odd.push(refuse("seal-not-understood", name).refusal);
    return undefined;
  };
  const model = sound(fileNames.model, isModel);
  const findings = sound(fileNames.findings, isSealedFindings);
  const pages = sound(fileNames.pages, isSealedPages);
  const inside: Inside = { ...(ledger && { ledger }), ...(model && { model }), ...(findings && { findings }), ...(pages && { pages }) };
  const { company, faults: keyFaults } = owner(read.value, means.keys);
  const judged = await checkJudging(inside, seal, means.rules);
  const shown = [...pageFaults(inside, file.pages), ...pictureFaults(file.pictures, seal)];
  const faults = [
    ...keyFaults,
    ...changed,
    ...odd,
    ...verification.faults,
    ...(await sealFaults(inside, read.value, means.digest)),
    ...modelFaults(inside),
    ...shown,
    ...judged.faults,
  ];
  return {
    ...base,
    standing: changed.length + shown.length > 0 ? "changed" : faults.length > 0 ? "at odds" : "unchanged",
    seal,
    key,
    ...(company && { company }),
    faults,
    judged: judged.record,
    ...(model && { model }),
  };
}
