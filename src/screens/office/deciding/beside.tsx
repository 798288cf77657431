import type { About, Finding, Live } from "../../../job/index.ts";
import { factsOf } from "../../../job/index.ts";
import { behindOf } from "../../parts/job-now.ts";
import type { JobTold } from "../../parts/job-page.tsx";
import { PictureView } from "../../parts/picture.tsx";
import { useSpeaking } from "../../parts/speaking.ts";

interface BesideProps {
  readonly told: JobTold;
  readonly about: About;
  readonly finding: Finding | undefined;
}

/** The items that something is about: itself, or those that the check reads. */
const itemsOf = ({ now }: JobTold, { item, check }: About): readonly string[] => {
  const read = now.state.sheet?.checks.find(({ id }) => id === check);
  return [...(item === undefined ? [] : [item]), ...(read === undefined ? [] : [...read.items, ...(read.minus ?? [])])];
};

/** What was entered for it, word for word as it was typed, with who and when; what does not count any more is said. */
export function Entered({ told, about, finding }: BesideProps) {
  const { say } = useSpeaking();
  const { now, sayer } = told;
  const behind = behindOf(now, say("someone"));
  const items = new Set(itemsOf(told, about));
  const counting = new Set(finding?.entries ?? []);
  const entered = now.state.facts.filter(
    ({ kind, standing, what }) =>
      (kind === "reading-taken" || kind === "answered") &&
      standing === "counts" &&
      items.has(String(what.item)) &&
      (about.tag === undefined || what.tag === undefined || what.tag === about.tag),
  );
  const choice = ({ what }: Live): string => {
    const item = now.state.sheet?.items.find(({ id }) => id === what.item);
    return sayer.words(item?.choices?.find(({ id }) => id === what.choice)?.title) || String(what.choice);
  };
  if (entered.length === 0) return <p>{say("deciding-nothing-entered")}</p>;
  return (
    <ul class="findings">
      {entered.map((fact) => (
        <li key={fact.id}>
          <span>
            {sayer.title({ item: String(fact.what.item), ...(typeof fact.what.tag === "string" ? { tag: fact.what.tag } : {}) })}:{" "}
            <b>{fact.kind === "answered" ? choice(fact) : `${fact.what.typed} ${fact.what.unit}`}</b>. {behind(fact.id).name},{" "}
            {sayer.moment(fact.at)}
            {finding !== undefined && !counting.has(fact.id) && ` (${say("deciding-counts-no-more")})`}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** The pictures of the same things, and of what stands in the same step for the same tag. */
export function Seen({ told, about, finding, job }: BesideProps & { readonly job: string }) {
  const { say } = useSpeaking();
  const { now, sayer, pictures } = told;
  const items = new Set(itemsOf(told, about));
  const facts = new Map(now.state.facts.map((fact) => [fact.id, fact]));
  const own = pictures.filter(({ entry, step }) => {
    const what = facts.get(entry)?.what;
    if (about.tag !== undefined && what?.tag !== undefined && what.tag !== about.tag) return false;
    return items.has(String(what?.item)) || (about.check !== undefined && step === finding?.step);
  });
  if (own.length === 0) return <p>{say("deciding-no-pictures")}</p>;
  return (
    <div class="pictures">
      {own.map((picture) => (
        <PictureView key={picture.entry} picture={picture} sayer={sayer} originals={true} job={job} />
      ))}
    </div>
  );
}

/** What was decided about it before, newest last. */
export function Before({ told, about }: Omit<BesideProps, "finding">) {
  const { say } = useSpeaking();
  const { now, sayer } = told;
  const behind = behindOf(now, say("someone"));
  const decided = (["concession", "departure-agreed", "rework-asked", "reworked", "does-not-apply"] as const).flatMap((kind) =>
    factsOf(now.state, kind)
      .filter(({ what }) => {
        const { item, check, tag } = what.about;
        return item === about.item && check === about.check && (tag === undefined || tag === about.tag);
      })
      .map((fact) => ({ kind, fact })),
  );
  if (decided.length === 0) return null;
  return (
    <>
      <h3>{say("deciding-before")}</h3>
      <ul class="findings">
        {decided
          .sort((a, b) => a.fact.position - b.fact.position)
          .map(({ kind, fact }) => (
            <li key={fact.id}>
              <span>
                {say(`deciding-was-${kind}`)}: {"done" in fact.what ? fact.what.done : fact.what.reason} ({behind(fact.id).name},{" "}
                {sayer.moment(fact.at)})
              </span>
            </li>
          ))}
      </ul>
    </>
  );
}
