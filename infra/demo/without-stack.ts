import { type AttachedVersion, chain, contentDigest, genesis, headAfter, type Json, type Ledger } from "#core/ledger/index.ts";
import type { Outcome } from "#core/outcome/index.ts";
import { digest } from "../node-digest.ts";
import { defaultSheet, defaultSheetJson } from "../sheets/index.ts";
import { kitCards } from "./company.ts";
import { courtyard } from "./courtyard.ts";
import { type Entering, enterAll } from "./enter.ts";
import { type JobBook, openBook, Phone, randomId } from "./phone.ts";
import { type Line, moment, ZONE } from "./script.ts";

function sure<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(`the demo's job was refused: ${outcome.refusal.code} at ${outcome.refusal.place}`);
}

const attached = async (kind: string, content: Json): Promise<AttachedVersion> => ({
  kind,
  digest: sure(await contentDigest(digest, content)),
  content,
});

/** Readings and answers that are taken once more, so that an item has several. */
const again = courtyard.crew.filter((line): line is Extract<Line, readonly unknown[]> => Array.isArray(line) && line[4] === undefined);

/** Chained as an edge would, received a second after each was made. */
async function chained(book: JobBook, versions: readonly AttachedVersion[]): Promise<Ledger> {
  const entries: Ledger["entries"][number][] = [];
  let head = genesis;
  for (const { sealed, body } of book.outbox) {
    const envelope = chain(head, sealed, sealed.made + 500, sealed.made + 1000);
    entries.push({ envelope, body });
    head = sure(await headAfter(digest, envelope));
  }
  return { format: 1, job: book.job, entries, versions, head };
}

/** The courtyard's job as its ledger without any stack, with so many entries: past its end, what was read and answered is entered once more. */
export async function courtyardLedger(most: number): Promise<Ledger> {
  const cards = kitCards.filter(({ id }) => courtyard.kitCards.includes(id));
  const versions = await Promise.all([
    attached("sheet", defaultSheetJson),
    ...cards.map((card) => attached("kit card", card as unknown as Json)),
  ]);
  const book = openBook(randomId(), Object.fromEntries(versions.map(({ digest, content }) => [digest, content])));
  const [desk, crew] = [new Phone(randomId()), new Phone(randomId())];
  const { title, ownNumber, who, figures, switches, opened } = courtyard;
  const at = moment(opened);
  await desk.enter(book, "job-opened", at, { what: { title, ownNumber, zone: ZONE, language: "en", units: "inch" }, who });
  for (const [number, { kind, digest, content }] of versions.entries()) {
    const name = (content as { readonly id: string }).id;
    await desk.enter(book, "version-taken-over", at, { what: { thing: kind, name, number: number + 1, digest } });
  }
  await desk.enter(book, "design-set", at, { what: { figures: figures as unknown as Json, switches } });
  const shared = { book, sheet: defaultSheet(), script: courtyard, photos: new Map(), labels: new Map() };
  const entering: Entering = { ...shared, phone: crew, fixes: true };
  await enterAll({ ...shared, phone: desk, fixes: false }, courtyard.office);
  await enterAll(entering, courtyard.crew);
  for (let i = 0; book.outbox.length < most; i += 1) await enterAll(entering, [again[i % again.length] as Line]);
  return chained({ ...book, outbox: book.outbox.slice(0, most) }, versions);
}
