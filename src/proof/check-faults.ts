import { contentDigest, type Digest, type Json, type Ledger } from "../ledger/index.ts";
import { type Refusal, refuse } from "../outcome/index.ts";
import type { RecordModel } from "../record/index.ts";
import { findingKey } from "./judged-again.ts";
import { wordsChanged } from "./page-words.ts";
import { notShown } from "./printed-texts.ts";
import { fileNames, type RecordSeal, type SealedFindings, type SealedPages, sealedFiles } from "./sealed-record.ts";

// Each gives one kind of fault. Places are names of attached files, or paths into what they hold.

/** `seal-file-missing`, `seal-file-changed`, `seal-file-unexpected`: every byte of every attached file counts. */
export async function fileFaults(
  files: ReadonlyMap<string, Uint8Array<ArrayBuffer>>,
  seal: RecordSeal,
  digest: Digest,
): Promise<readonly Refusal[]> {
  const faults: Refusal[] = [];
  for (const name of sealedFiles) {
    const bytes = files.get(name);
    if (bytes === undefined) faults.push(refuse("seal-file-missing", name, { file: name }).refusal);
    else if ((await digest(bytes)) !== seal.files[name]) faults.push(refuse("seal-file-changed", name, { file: name }).refusal);
  }
  const known: readonly string[] = [...sealedFiles, fileNames.seal];
  const others = [...files.keys()].filter((name) => !known.includes(name));
  return [...faults, ...others.map((file) => refuse("seal-file-unexpected", file, { file }).refusal)];
}

interface Inside {
  readonly ledger?: Ledger;
  readonly model?: RecordModel;
  readonly findings?: SealedFindings;
  readonly pages?: SealedPages;
}

/** `seal-differs`: what the seal says of job, head, model and record, and what the files hold, are not the same. */
export async function sealFaults(
  { ledger, model, findings }: Inside,
  { seal, key }: { readonly seal: RecordSeal; readonly key: string },
  digest: Digest,
): Promise<readonly Refusal[]> {
  const differs: string[] = [];
  const same = (what: string, good: boolean): unknown => good || differs.push(what);
  if (ledger !== undefined) {
    same("job", ledger.job === seal.job);
    same("head", ledger.head.number === seal.head.number && ledger.head.hash === seal.head.hash);
  }
  if (model !== undefined) {
    const { title, edition, proof } = model;
    const made = await contentDigest(digest, model as unknown as Json);
    same("model", made.ok && made.value === seal.modelDigest);
    same("version", title.version === seal.version && title.issuedAt === seal.issuedAt && edition === seal.edition);
    same("head", proof.head === seal.head.hash && proof.entries === seal.head.number);
    same("rules", proof.rules === seal.rules.version);
    same("key", proof.key === undefined || proof.key === key);
    if (findings !== undefined) {
      const sealedKeys = findings.findings.map((one) => [findingKey({ ...one, holds: "" }), one.verdict]);
      const printed = model.findings.map((one) => [findingKey({ ...one, holds: "" }), one.verdict]);
      same("findings", JSON.stringify(sealedKeys) === JSON.stringify(printed));
    }
  }
  return [...new Set(differs)].map((what) => refuse("seal-differs", `seal/${what}`, { what }).refusal);
}

/** `seal-text-not-shown`: the sealed pages do not show something that the sealed view model says. */
export function modelFaults({ model, pages }: Inside): readonly Refusal[] {
  if (model === undefined || pages === undefined) return [];
  return notShown(model, pages.pages).map(({ place, text }) => refuse("seal-text-not-shown", place, { text }).refusal);
}

/** `seal-pages`, `seal-page-words`: the pages of the file are not those that were sealed. */
export function pageFaults({ model, pages }: Inside, found: readonly string[]): readonly Refusal[] {
  if (pages === undefined) {
    // the sealed words are gone: the view model is the next best to compare with
    if (model === undefined) return [];
    return notShown(model, found).map(({ place, text }) => refuse("seal-text-not-shown", place, { text }).refusal);
  }
  const sealed = pages.pages;
  const count = sealed.length === found.length ? [] : [refuse("seal-pages", "pages", { was: sealed.length, now: found.length }).refusal];
  const words = sealed
    .slice(0, found.length)
    .flatMap((page, index) =>
      wordsChanged(page, found[index] ?? "").map(
        (change) => refuse("seal-page-words", `pages/${index}`, { page: index + 1, was: change.sealed, now: change.found }).refusal,
      ),
    );
  return [...count, ...words];
}

/** `seal-picture-missing`, `seal-picture-unknown`: the pictures in the file are not those that were printed, byte for byte. */
export function pictureFaults(found: readonly string[], { photos, papers = {} }: RecordSeal): readonly Refusal[] {
  const there = new Set(found);
  const printed = [
    ...Object.entries(photos).flatMap(([photo, print]) => (print === null ? [] : [{ photo, print }])),
    ...Object.entries(papers).flatMap(([photo, pictures]) => pictures.map((print) => ({ photo, print }))),
  ];
  const known = new Set(printed.map(({ print }) => print));
  return [
    ...printed.flatMap(({ photo, print }) =>
      there.has(print) ? [] : [refuse("seal-picture-missing", `photo/${photo}`, { photo }).refusal],
    ),
    ...[...there].flatMap((print) => (known.has(print) ? [] : [refuse("seal-picture-unknown", `picture/${print}`).refusal])),
  ];
}
