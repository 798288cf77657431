import type { Ledger } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { fileNames, judge, type RecordSeal, rulesDigests, type SealedPages, sealedFindings } from "#core/proof/index.ts";
import { filesOf, type RecordModel } from "#core/record/index.ts";
import type { PrintAnswer, PrintAttachment, PrintShown } from "#functions/shared/index.ts";
import { sha256Hex } from "../chance.ts";
import { type SigningKey, signed } from "../seals/index.ts";
import type { Services } from "../services.ts";

/** What is printed of a record, and the texts of the files that go into it. */
export interface ToSeal {
  readonly company: string;
  readonly job: string;
  readonly record: string;
  readonly model: RecordModel;
  readonly modelDigest: string;
  readonly attached: Ledger;
  readonly texts: Readonly<Record<"findings" | "ledger" | "model", string>>;
}

/** `findings.json`: findings and clearances of the whole ledger, as they stood when the record was issued. */
export function findingsText(whole: Ledger, attached: Ledger, issuedAt: number): string {
  const all = judge(whole, issuedAt);
  return JSON.stringify(sealedFindings(all, attached === whole ? all : judge(attached, issuedAt)));
}

/** The files that are in the record before it is sealed. */
export const attachmentsOf = ({ findings, ledger, model }: ToSeal["texts"]): readonly PrintAttachment[] => {
  const type = "application/json";
  return [
    { name: fileNames.findings, type, text: findings, relationship: "Data" },
    { name: fileNames.ledger, type, text: ledger, relationship: "Data" },
    { name: fileNames.model, type, text: model, relationship: "Data" },
  ];
};

async function sealOf(toSeal: ToSeal, pages: string, { pictures, papers }: Pick<PrintShown, "pictures" | "papers">): Promise<RecordSeal> {
  const { company, job, record, model, modelDigest, attached, texts } = toSeal;
  const { title, proof, edition } = model;
  const digest = rulesDigests[proof.rules];
  if (digest === undefined) throw new Error(`rules ${proof.rules} have no built file: npm run rules`);
  const [findings, ledger, modelBytes, words] = await Promise.all([texts.findings, texts.ledger, texts.model, pages].map(sha256Hex));
  return {
    format: 1,
    company,
    job,
    record,
    version: title.version,
    edition,
    issuedAt: title.issuedAt,
    head: { ...attached.head },
    rules: { version: proof.rules, digest },
    modelDigest,
    files: {
      [fileNames.findings]: findings as string,
      [fileNames.ledger]: ledger as string,
      [fileNames.model]: modelBytes as string,
      [fileNames.pages]: words as string,
    },
    photos: Object.fromEntries(filesOf(model).map(({ photo }) => [photo, pictures[photo] ?? null])),
    ...(Object.keys(papers).length > 0 && { papers }),
  };
}

/** Seals what was printed and puts the seal into it. Answers the finished file and the seal; refuses what print refuses. */
export async function sealPrinted(
  services: Services,
  key: SigningKey,
  toSeal: ToSeal,
  { at, printed }: { readonly at: string; readonly printed: PrintAnswer },
): Promise<Outcome<{ readonly printed: PrintAnswer; readonly seal: string }>> {
  if (printed.shown === undefined) return refuse("print-failed", "print", { why: "shape" });
  const { pages } = printed.shown;
  const words = JSON.stringify({ format: 1, pages } satisfies SealedPages);
  const seal = await signed(await sealOf(toSeal, words, printed.shown), key);
  const attachments: readonly PrintAttachment[] = [
    { name: fileNames.seal, type: "application/jose", text: seal, relationship: "Supplement" },
    { name: fileNames.pages, type: "application/json", text: words, relationship: "Data" },
  ];
  const finished = await services.machines.print({ kind: "sealing", key: at, attachments, issuedAt: toSeal.model.title.issuedAt });
  return finished.ok ? ok({ printed: finished.value, seal }) : finished;
}
