import { factsOf, type JobState } from "#core/job/index.ts";
import type { Json } from "#core/ledger/index.ts";
import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { type Decision, decision, entryMade, readWhat } from "#core/wire/index.ts";
import { currentJob } from "../jobs/read.ts";
import { sayInJob } from "../jobs/say-in-job.ts";
import type { Call } from "./route.ts";
import { jobOf, json, officeUp, route } from "./route.ts";

/** The crew's word by telephone that a decision names: it must be there, and nobody may have answered it otherwise. */
function wordRefused(state: JobState, { kind, what, id }: Decision): Outcome<void> {
  const { confirms, goAhead = confirms } = what as { readonly confirms?: string; readonly goAhead?: string };
  if (goAhead === undefined) return ok(undefined);
  const place = kind === "go-ahead" ? "what/confirms" : "what/goAhead";
  const words = factsOf(state, "go-ahead");
  if (!words.some((word) => word.id === goAhead && word.what.confirms === undefined)) return refuse("entry-unknown-entry", place, {});
  const answered = [
    ...words.filter((word) => word.what.confirms === goAhead),
    ...factsOf(state, "go-ahead-denied").filter((word) => word.what.goAhead === goAhead),
  ];
  return answered.some((word) => word.id !== id) ? refuse("entry-answered", place, {}) : ok(undefined);
}

/** A picture or a paper that a decision names has arrived before it. */
async function fileRefused({ services, session: { company } }: Call, { kind, what }: Decision): Promise<Outcome<void>> {
  const { photo, pdf } = what as { readonly photo?: string; readonly pdf?: string };
  if (photo !== undefined && !(await services.photos.get(company, photo))) return refuse("photo-unknown", "what/photo", {});
  if (kind === "paper-added" && pdf !== undefined && (await services.papers.get(company, pdf)) === undefined)
    return refuse("paper-unknown", "what/pdf", {});
  return ok(undefined);
}

export const decide = route({
  method: "POST",
  path: "/api/jobs/:job/decisions",
  says: "Enters what the office decides: accepted as built, agreed beforehand, rework, a word by telephone; what an authority said; or a paper",
  who: officeUp,
  takes: decision,
  gives: { 201: entryMade },
  async run(call) {
    const { services, session, input, now } = call;
    const place = await jobOf(call);
    if (!place.ok) return place;
    const { kind, who, id } = input;
    const what = input.what as Json | undefined;
    const read = what === undefined ? refuse("entry-shape", "what", { wanted: "an object" }) : readWhat(kind, what, "what");
    if (!read.ok) return read;
    const word = wordRefused((await currentJob(services, place.value)).state, input);
    if (!word.ok) return word;
    const file = await fileRefused(call, input);
    if (!file.ok) return file;
    const contents = { what: what as Json, ...(who === undefined ? {} : { who: who as unknown as Json }) };
    const made = await sayInJob(services, session, place.value, { id, kind, contents, at: now });
    return made.ok ? json(made.value, 201) : made;
  },
});
