import type { Entry } from "./fact.ts";

/** An entry in the order of the work. */
export interface Ordered {
  readonly entry: Entry;
  /** The phone's clock when made, corrected by the skew at the nearest contact; ms. */
  readonly at: number;
  /** Standard uncertainty of `at`, ms. */
  readonly doubt: number;
}

/** Half a second for the way of the quickest contact, and 20 ppm of drift (a usual quartz clock, from memory) since then. */
const CONTACT_DOUBT_MS = 500;
const DRIFT = 20e-6;
/** A phone waits no longer for an answer: two contacts that differ by more do so because the clock was set between them. */
const LONGEST_WAY_MS = 120_000;

/** A moment at which a phone and the edge compared clocks. */
interface Contact {
  readonly sent: number;
  readonly received: number;
  /** Between two stretches the phone's clock was set back. */
  readonly stretch: number;
  /** By how much its way took longer than that of the quickest contact, ms. */
  readonly slower: number;
}

interface PhoneClock {
  readonly contacts: readonly Contact[];
  /** Stretch of each entry, in the phone's own order. */
  readonly stretches: readonly number[];
}

/** Index of the last entry that each contact carried. */
function carriedBy(own: readonly Entry[]): ReadonlyMap<number, Pick<Contact, "sent" | "received">> {
  const known = new Map<number, number[]>();
  const carried = new Map<number, Pick<Contact, "sent" | "received">>();
  for (let i = own.length - 1; i >= 0; i -= 1) {
    const { sent, received } = own[i] as Entry;
    if (sent === undefined || received === undefined) continue;
    const later = known.get(received);
    if (later?.includes(sent)) continue;
    if (later) later.push(sent);
    else known.set(received, [sent]);
    carried.set(i, { sent, received });
  }
  return carried;
}

/** A clock that goes back within the phone's own order was set back there: contacts before and after it do not serve alike. */
function clockOf(own: readonly Entry[]): PhoneClock {
  const carried = carriedBy(own);
  const contacts: Omit<Contact, "slower">[] = [];
  const stretches: number[] = [];
  let stretch = 0;
  let clock = Number.NEGATIVE_INFINITY;
  const tick = (reads: number): number => {
    if (reads < clock) stretch += 1;
    clock = reads;
    return stretch;
  };
  own.forEach(({ made }, i) => {
    stretches.push(tick(made));
    const contact = carried.get(i);
    if (contact) contacts.push({ ...contact, stretch: tick(contact.sent) });
  });
  contacts.sort((a, b) => a.sent - b.sent || a.received - b.received);
  const after = slowerThan(contacts);
  const before = slowerThan([...contacts].reverse()).reverse();
  return { contacts: contacts.map((contact, i) => ({ ...contact, slower: Math.max(after[i] ?? 0, before[i] ?? 0) })), stretches };
}

/**
 * What a request waited on its way stands in the skew, which no clock but the edge's tells: the smallest skew is that of the
 * quickest way, and every other contact is doubtful by how far it lies above it. Of each contact, by how much it is slower than
 * those that stand before it in the list; ms.
 */
function slowerThan(contacts: readonly Omit<Contact, "slower">[]): number[] {
  const quickest = new Map<number, { readonly skew: number; readonly sent: number }>();
  return contacts.map(({ sent, received, stretch }) => {
    const skew = received - sent;
    const best = quickest.get(stretch);
    const drifted = best === undefined ? skew : best.skew + DRIFT * Math.abs(sent - best.sent);
    const isQuickest = skew <= drifted || skew - drifted > LONGEST_WAY_MS;
    if (isQuickest) quickest.set(stretch, { skew, sent });
    return isQuickest ? 0 : Math.round(skew - drifted);
  });
}

/** Of contacts in the order of their sending: the earlier of two that are as near. */
function nearest(contacts: readonly Contact[], made: number): Contact | undefined {
  let [from, to] = [0, contacts.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((contacts[middle] as Contact).sent < made) from = middle + 1;
    else to = middle;
  }
  const after = contacts[from];
  let before = contacts[from - 1];
  if (before === undefined || (after !== undefined && after.sent - made < made - before.sent)) return after;
  for (let i = from - 2; contacts[i]?.sent === before.sent; i -= 1) before = contacts[i] as Contact;
  return before;
}

/** One phone's entries, in its own order, with corrected times that never go back. */
function phoneOrder(entries: readonly Entry[]): readonly Ordered[] {
  const own = [...entries].sort((a, b) => a.run - b.run || compareText(a.id, b.id));
  const { contacts, stretches } = clockOf(own);
  const byStretch = new Map<number, Contact[]>();
  for (const contact of contacts) {
    const known = byStretch.get(contact.stretch);
    if (known) known.push(contact);
    else byStretch.set(contact.stretch, [contact]);
  }
  let latest = Number.NEGATIVE_INFINITY;
  return own.map((entry, i) => {
    const { made, received = Number.POSITIVE_INFINITY } = entry;
    const contact = nearest(byStretch.get(stretches[i] ?? 0) ?? [], made) ?? nearest(contacts, made);
    // nothing was made after the edge had it: that bounds a clock that no contact of its own stretch corrects
    const corrected = Math.min(contact ? made + (contact.received - contact.sent) : made, received);
    const doubt = contact ? CONTACT_DOUBT_MS + contact.slower + DRIFT * Math.abs(contact.sent - made) : CONTACT_DOUBT_MS;
    latest = Math.max(latest, corrected);
    return { entry, at: latest, doubt };
  });
}

/**
 * The entries in the order of the work, whatever order they arrived in: across phones by corrected clocks, within one
 * phone by its running number (a clock set back in mid-job does not turn the phone's own order round). The entries' own
 * times never serve to correct a clock.
 */
export function workOrder(entries: readonly Entry[]): readonly Ordered[] {
  const byPhone = new Map<string, Entry[]>();
  for (const entry of entries) {
    const own = byPhone.get(entry.author.phone);
    if (own) own.push(entry);
    else byPhone.set(entry.author.phone, [entry]);
  }
  return [...byPhone.values()]
    .flatMap(phoneOrder)
    .sort(
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
