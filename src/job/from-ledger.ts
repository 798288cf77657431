import { isWithheld, type Json, type Ledger, type LedgerEntry, type Part, type Withheld } from "../ledger/index.ts";
import type { Entry } from "./fact.ts";
import type { JobLedger } from "./state.ts";

function contentOf(part: Part | Withheld | undefined): Json | undefined {
  return part === undefined || isWithheld(part) ? undefined : part.content;
}

/** An entry of the ledger as the core reads it; `digest` is its entry digest, where the caller has it. */
export function entryOf({ envelope, body }: LedgerEntry, digest = ""): Entry {
  const what = contentOf(body.what);
  const who = contentOf(body.who);
  const where = contentOf(body.where);
  return {
    id: envelope.id,
    digest,
    kind: envelope.kind,
    author: envelope.author,
    run: envelope.run,
    made: envelope.made,
    sent: envelope.sent,
    received: envelope.received,
    number: envelope.number,
    ...(what === undefined ? {} : { what }),
    ...(who === undefined ? {} : { who }),
    ...(where === undefined ? {} : { where }),
  };
}

/** What findings are computed from, out of a whole ledger or an edition of one. */
export function jobLedgerOf(ledger: Ledger): JobLedger {
  return {
    entries: ledger.entries.map((entry) => entryOf(entry)),
    versions: Object.fromEntries(ledger.versions.map(({ digest, content }) => [digest, content])),
  };
}
