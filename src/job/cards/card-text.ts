import { contentDigest, type Digest } from "../../ledger/index.ts";
import { type Outcome, ok } from "../../outcome/index.ts";
import { CARD_VERSION, type CardPlace, cardCodeSigns, cardSigns, NO_STEP, partSigns, signsOf } from "../../photo/index.ts";

/** What a card is printed for; without a step it is for any step of its job. */
export interface CardFor {
  readonly company: string;
  readonly job: string;
  readonly step?: string;
}

/** A job that a card may name, with the steps of its tolerance sheet. */
export interface CardJob {
  readonly job: string;
  readonly steps: readonly string[];
}

/**
 * What a code says: the card's job and step, or why it says nothing. `another company`: no card of this one. `job unknown`: of this
 * company by its signs, and of none of the jobs that were given. `step unknown`: the job's, with a step that its tolerance
 * sheet does not have. `altered`: its check is not that of what it names.
 */
export type CardRead =
  | ({ readonly is: "card"; readonly job: string; readonly step?: string } & CardPlace)
  | { readonly is: "not a card" | "other version" | "another company" | "job unknown" | "step unknown" | "altered" };

type Part = keyof typeof partSigns;

/** What a part says of these ids. As canonical JSON, so that no two lists of ids read alike. */
async function part(digest: Digest, what: Part, ids: readonly string[]): Promise<Outcome<string>> {
  const whole = await contentDigest(digest, ["card", CARD_VERSION, what, ...ids]);
  return whole.ok ? ok(signsOf(whole.value, partSigns[what])) : whole;
}

const stepOf = async (digest: Digest, { company, job, step }: CardFor): Promise<Outcome<string>> =>
  step === undefined ? ok(NO_STEP) : part(digest, "step", [company, job, step]);
const checkOf = (digest: Digest, { company, job, step }: CardFor, code: string): Promise<Outcome<string>> =>
  part(digest, "check", [company, job, ...(step === undefined ? [] : [step]), code]);

/** Text of one code of a card. Refuses an id with half of a pair of surrogates in it. */
export async function cardText(digest: Digest, card: CardFor, { paper, place }: CardPlace): Promise<Outcome<string>> {
  const code = cardCodeSigns[paper][place];
  const { company, job } = card;
  let text = `AB${CARD_VERSION}${code}`;
  for (const made of [
    part(digest, "company", [company]),
    part(digest, "job", [company, job]),
    stepOf(digest, card),
    checkOf(digest, card, code),
  ]) {
    const signs = await made;
    if (!signs.ok) return signs;
    text += signs.value;
  }
  return ok(text);
}

/** Of these jobs those that a code's text may name by its signs alone: none or one, hardly ever two. */
export async function cardJobs(digest: Digest, text: string, company: string, jobs: Iterable<string>): Promise<readonly string[]> {
  const found = cardSigns(text);
  if (typeof found === "string") return [];
  const named: string[] = [];
  for (const job of jobs) {
    const signs = await part(digest, "job", [company, job]);
    if (signs.ok && signs.value === found.job) named.push(job);
  }
  return named;
}

/** Reads a code's text against the jobs that are known of a company. Two jobs or steps with the same signs are told apart by the check. */
export async function readCard(digest: Digest, text: string, company: string, jobs: Iterable<CardJob>): Promise<CardRead> {
  const found = cardSigns(text);
  if (typeof found === "string") return { is: found };
  const { paper, place } = found;
  const says = async (signs: string, made: Promise<Outcome<string>>): Promise<boolean> => {
    const outcome = await made;
    return outcome.ok && outcome.value === signs;
  };
  if (!(await says(found.company, part(digest, "company", [company])))) return { is: "another company" };
  let why: "job unknown" | "step unknown" | "altered" = "job unknown";
  for (const { job, steps } of jobs) {
    if (!(await says(found.job, part(digest, "job", [company, job])))) continue;
    if (why === "job unknown") why = "step unknown";
    for (const step of [undefined, ...steps]) {
      const card: CardFor = { company, job, ...(step === undefined ? {} : { step }) };
      if (!(await says(found.step, stepOf(digest, card)))) continue;
      why = "altered";
      if (await says(found.check, checkOf(digest, card, cardCodeSigns[paper][place])))
        return { is: "card", job, ...(step === undefined ? {} : { step }), paper, place };
    }
  }
  return { is: why };
}
