import { type Ledger, verify } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { type ArchiveList, archiveList, read } from "#core/wire/index.ts";
import { sha256Hex } from "../chance.ts";
import { COMPANY_LEDGER } from "../company/change.ts";
import { joined } from "../joined.ts";
import type { Services } from "../services.ts";
import type { ArchiveEntries } from "./entries.ts";
import { listName, namesFit } from "./files.ts";

const LARGEST_LIST = 20_000_000;
const LARGEST_LEDGER = 60_000_000;

/** The list that an archive begins with. Refuses `archive-unreadable`. */
export async function listIn(entries: ArchiveEntries): Promise<Outcome<ArchiveList>> {
  const name = await entries.next();
  if (!name.ok) return name;
  if (name.value === undefined || !/^list-[0-9a-f]{64}\.json$/.test(name.value))
    return refuse("archive-unreadable", "archive", { why: "no list" });
  const text = await entries.text(LARGEST_LIST);
  if (!text.ok) return text;
  if (name.value !== listName(await sha256Hex(text.value))) return refuse("archive-part-differs", "list.json", {});
  let json: unknown;
  try {
    json = JSON.parse(text.value);
  } catch {
    return refuse("archive-unreadable", "archive", { why: "no list" });
  }
  const list = read(archiveList, json, "archive-unreadable", "list.json");
  if (list.ok && (!namesFit(list.value) || list.value.job.startsWith(COMPANY_LEDGER)))
    return refuse("archive-unreadable", "list.json", { why: "names" });
  return list;
}

/** The next file has to be the one that the list names. */
export async function expected(entries: ArchiveEntries, wanted: string): Promise<Outcome<null>> {
  const name = await entries.next();
  if (!name.ok) return name;
  if (name.value === wanted) return ok(null);
  return name.value === undefined ? refuse("archive-part-missing", wanted, {}) : refuse("archive-part-unexpected", name.value, {});
}

/** The ledger of an archive, verified entry by entry. Refuses its first fault. */
export async function ledgerIn(services: Services, entries: ArchiveEntries, list: ArchiveList): Promise<Outcome<Ledger>> {
  if (list.ledger.bytes > LARGEST_LEDGER) return refuse("archive-unreadable", "ledger.json", { why: "too large" });
  const there = await expected(entries, list.ledger.name);
  if (!there.ok) return there;
  const parts: Uint8Array[] = [];
  for await (const block of entries.bytes(list.ledger.bytes)) parts.push(block);
  const bytes = joined(parts);
  const digest = await services.digest(bytes);
  if (digest !== list.ledger.sha256) return refuse("archive-part-differs", "ledger.json", {});
  let ledger: unknown;
  try {
    ledger = JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return refuse("ledger-not-json", "ledger.json", {});
  }
  const verified = await verify(services.digest, ledger);
  const [fault] = verified.faults;
  if (fault) return { ok: false, refusal: { ...fault, place: `ledger.json/${fault.place}` } };
  const whole = ledger as Ledger;
  const same = whole.job === list.job && whole.head.hash === list.head.hash && whole.head.number === list.head.number;
  return same && whole.entries.length > 0 ? ok(whole) : refuse("ledger-head", "ledger.json/head", {});
}
