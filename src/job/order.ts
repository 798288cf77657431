import type { Entry } from "./fact.ts";

/** An entry in the order of the work. */
export interface Ordered {
  readonly entry: Entry;
  /** The phone's clock when made, corrected by the skew at the nearest contact; ms. */
  readonly at: number;
  /** Standard uncertainty of `at`, ms. */
  readonly doubt: number;
}

/** Half a second for the way of one contact, and 20 ppm of drift (a usual quartz clock, from memory) since then. */
const CONTACT_DOUBT_MS = 500;
const DRIFT = 20e-6;

interface Contact {
  readonly sent: number;
  readonly received: number;
}

/** Every moment at which a phone and the edge compared clocks. The entries' own times never serve for that. */
function contactsByPhone(entries: readonly Entry[]): ReadonlyMap<string, readonly Contact[]> {
  const contacts = new Map<string, Contact[]>();
  for (const { author, sent, received } of entries) {
    if (sent === undefined || received === undefined) continue;
    const known = contacts.get(author.phone) ?? [];
    if (!known.some((c) => c.sent === sent && c.received === received)) known.push({ sent, received });
    contacts.set(author.phone, known);
  }
  for (const known of contacts.values()) known.sort((a, b) => a.sent - b.sent || a.received - b.received);
  return contacts;
}

function nearest(contacts: readonly Contact[], made: number): Contact | undefined {
  let best: Contact | undefined;
  for (const contact of contacts) {
    if (best === undefined || Math.abs(contact.sent - made) < Math.abs(best.sent - made)) best = contact;
  }
  return best;
}

/**
 * The entries in the order of the work, whatever order they arrived in: across phones by corrected clocks, within one
 * phone by its running number (a clock set back in mid-job does not turn the phone's own order round).
 */
export function workOrder(entries: readonly Entry[]): readonly Ordered[] {
  const contacts = contactsByPhone(entries);
  const byPhone = new Map<string, Entry[]>();
  for (const entry of entries) {
    const own = byPhone.get(entry.author.phone);
    if (own) own.push(entry);
    else byPhone.set(entry.author.phone, [entry]);
  }
  const ordered: Ordered[] = [];
  for (const [phone, own] of byPhone) {
    own.sort((a, b) => a.run - b.run || compareText(a.id, b.id));
    let latest = Number.NEGATIVE_INFINITY;
    for (const entry of own) {
      const contact = nearest(contacts.get(phone) ?? [], entry.made);
      const corrected = contact ? entry.made + (contact.received - contact.sent) : entry.made;
      const doubt = contact ? CONTACT_DOUBT_MS + DRIFT * Math.abs(contact.sent - entry.made) : CONTACT_DOUBT_MS;
      latest = Math.max(latest, corrected);
      ordered.push({ entry, at: latest, doubt });
    }
  }
  return ordered.sort(
    (a, b) =>
      a.at - b.at ||
      compareText(a.entry.author.phone, b.entry.author.phone) ||
      a.entry.run - b.entry.run ||
      compareText(a.entry.id, b.entry.id),
  );
}

/** By UTF-16 code units, the same everywhere; never by a locale. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
