import { chain, entryDigest, genesis, headAfter, type Json, type Ledger, type LedgerEntry, seal, sealedOf } from "#core/ledger/index.ts";
import { digest } from "#infra/node-digest.ts";
import { type Loose, salt, sha256 } from "./edge.ts";

export interface PackedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const encoder = new TextEncoder();
export const jsonBytes = (value: unknown): Uint8Array => encoder.encode(JSON.stringify(value));

const number = (value: number, bytes: number): number[] => Array.from({ length: bytes }, (_, i) => (value >>> (8 * i)) & 255);

/** Packed as our own archives are: nothing compressed, sizes behind the bytes. A list is named by its digest, unless it is told not to be. */
export function packed(files: readonly PackedFile[], { asNamed = false }: { readonly asNamed?: boolean } = {}): Uint8Array<ArrayBuffer> {
  const parts: Uint8Array[] = [];
  for (const { name, bytes } of files) {
    const named = encoder.encode(name === "list" && !asNamed ? `list-${sha256(bytes)}.json` : name);
    const head = [...number(0x04034b50, 4), ...number(20, 2), ...number(8, 2), ...number(0, 18), ...number(named.length, 2), 0, 0];
    const behind = [...number(0x08074b50, 4), ...number(0, 4), ...number(bytes.length, 4), ...number(bytes.length, 4)];
    parts.push(new Uint8Array(head), named, bytes, new Uint8Array(behind));
  }
  parts.push(new Uint8Array([...number(0x02014b50, 4), ...number(0, 60)]));
  return Uint8Array.from(Buffer.concat(parts));
}

/** A ledger whose chain holds, whatever its entries say. */
export async function chained(
  job: string,
  said: readonly { readonly kind: string; readonly what: Json; readonly who?: Json }[],
): Promise<Ledger> {
  const entries: LedgerEntry[] = [];
  let head = genesis;
  for (const [run, { kind, what, who }] of said.entries()) {
    const contents = who === undefined ? { what } : { what, who };
    const salts = who === undefined ? { what: salt() } : { what: salt(), who: salt() };
    const made = await seal(digest, {
      job,
      id: `entry-${run}`,
      kind,
      author: { person: "person-1", phone: "phone-1" },
      run,
      made: 1_700_000_000_000 + run,
      contents,
      salts,
    });
    // what has no canonical form cannot have been sealed by anybody
    if (!made.ok) continue;
    const envelope = chain(head, made.value.sealed, 1_700_000_000_000, 1_700_000_000_000 + run);
    const next = await headAfter(digest, envelope);
    const whole = await entryDigest(digest, sealedOf(envelope));
    if (!next.ok || !whole.ok) throw new Error("a sealed entry that does not chain");
    head = next.value;
    entries.push({ envelope, body: made.value.body });
  }
  return { format: 1, job, head, entries, versions: [] };
}

const fileOf = (name: string, bytes: Uint8Array) => ({ name, bytes: bytes.length, sha256: sha256(bytes) });

/** An archive of a job: its list, and everything that the list names, in its order. */
export function archiveOf(ledger: Ledger): { readonly list: Loose; readonly files: readonly PackedFile[] } {
  const photo = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, ...Array.from({ length: 300 }, (_, i) => i % 251)]);
  const [paper, pdf] = [encoder.encode("%PDF-1.7 paper"), encoder.encode("%PDF-1.7 record")];
  const record = "0f".repeat(16);
  const files: readonly PackedFile[] = [
    { name: "ledger.json", bytes: jsonBytes(ledger) },
    { name: `photos/${sha256(photo)}`, bytes: photo },
    { name: `blurred/${sha256(photo)}/screen.jpg`, bytes: photo.subarray(0, 100) },
    { name: `papers/${sha256(paper)}`, bytes: paper },
    { name: `records/${record}/pdf`, bytes: pdf },
    { name: `records/${record}/model.json`, bytes: jsonBytes({ format: 1 }) },
  ];
  const [own, ofPhoto, blurred, ofPaper, ...ofRecord] = files.map(({ name, bytes }) => fileOf(name, bytes));
  const list = {
    kind: "Asburied job archive",
    format: 1,
    job: ledger.job,
    company: "Stillwater Yard Works",
    taken: 1_700_000_000_000,
    head: ledger.head,
    ledger: own,
    versions: {},
    people: [{ id: "person-1", name: "Sam Birch", role: "crew" }],
    photos: [
      {
        sha256: sha256(photo),
        type: "image/jpeg",
        bytes: photo.length,
        file: ofPhoto,
        blurred: { digest: "d".repeat(64), regions: "[]", made: 1_700_000_000_000, screen: blurred },
      },
    ],
    papers: [ofPaper],
    records: [
      {
        id: record,
        version: 1,
        edition: "customer",
        head: ledger.head,
        pages: 3,
        bytes: pdf.length,
        sha256: sha256(pdf),
        issued: 1_700_000_000_000,
        files: ofRecord,
      },
    ],
  };
  return { list, files };
}
