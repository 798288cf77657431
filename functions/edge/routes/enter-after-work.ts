import type { Json } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { type AfterWork, afterWork, entryMade, readWhat } from "#core/wire/index.ts";
import { sha256Hex } from "../chance.ts";
import { currentJob } from "../jobs/read.ts";
import { sayInJob } from "../jobs/say-in-job.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

/** What was shown is what the digest says: an entry of a text that nobody saw would prove nothing. */
async function textRefused({ kind, what }: AfterWork): Promise<Outcome<void>> {
  const { text, textDigest } = what as { readonly text?: string; readonly textDigest?: string };
  if (text === undefined) return ok(undefined);
  const found = await sha256Hex(text);
  return found === textDigest ? ok(undefined) : refuse("entry-digest-differs", "what/textDigest", { kind, found });
}

const isJson = (what: AfterWork["what"]): what is Json => what !== undefined;

export const enterAfterWork = route({
  method: "POST",
  path: "/api/jobs/:job/afterwards",
  says: "Enters what came after the work: how it was handed over, its warranty, services and callbacks",
  who: officeUp,
  takes: afterWork,
  gives: { 201: entryMade },
  async run(call) {
    const { services, session, input, now } = call;
    const place = await jobOf(call);
    if (!place.ok) return place;
    const { kind, what, who, id } = input;
    const read = isJson(what) ? readWhat(kind, what, "what") : refuse("entry-shape", "what", { wanted: "an object" });
    if (!read.ok) return read;
    const shown = await textRefused(input);
    if (!shown.ok) return shown;
    const { callback } = what as { readonly callback?: string };
    if (callback !== undefined) {
      const { state } = await currentJob(services, place.value);
      const opened = state.byKind.get("callback-opened") ?? [];
      if (!opened.some((fact) => fact.id === callback)) return refuse("entry-unknown-entry", "what/callback", { entry: callback });
    }
    const contents = { what, ...(who === undefined ? {} : { who: who as unknown as Json }) };
    const made = await sayInJob(services, session, place.value, { id, kind, contents, at: now });
    return made.ok ? json(made.value, 201) : made;
  },
});
