import { factsOf } from "../../../job/index.ts";
import { behindOf } from "../../parts/job-now.ts";
import type { JobTold } from "../../parts/job-page.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { DecisionForm, Typed } from "./decision-form.tsx";

/** Go-aheads that the crew entered as given by telephone: whoever gave it says so, or that nobody did. */
export function WordsByTelephone({ job, told: { now, sayer, again } }: { readonly job: string; readonly told: JobTold }) {
  const { say, session } = useSpeaking();
  const behind = behindOf(now, say("someone"));
  const all = factsOf(now.state, "go-ahead");
  const denied = new Set(factsOf(now.state, "go-ahead-denied").map(({ what }) => what.goAhead));
  const words = all.filter(({ what }) => what.confirms === undefined && what.role === "crew");
  const open = words.filter(({ id }) => !denied.has(id) && !all.some(({ what }) => what.confirms === id));
  if (open.length === 0) return null;
  return (
    <section>
      <h3>{say("deciding-words")}</h3>
      {open.map(({ id, at, what: { covering, reason, about = [] } }) => (
        <article key={id}>
          <p>
            <b>{sayer.words(now.state.sheet?.coverings.find((one) => one.id === covering)?.title)}</b>.{" "}
            {say("deciding-word-of", { name: behind(id).name, time: sayer.moment(at), reason })}
            {about.length > 0 && ` ${about.map(sayer.title).join("; ")}`}
          </p>
          <DecisionForm
            job={job}
            entered={again}
            kind="go-ahead"
            title="deciding-word-confirm"
            enter="deciding-word-confirm-enter"
            said={(typed) => ({
              what: { covering, reason: typed("reason"), role: session.role, confirms: id },
              who: { name: typed("name") },
            })}
          >
            <Typed name="name" word="deciding-word-name" value={session.name} />
            <Typed name="reason" word="deciding-reason" long={true} />
          </DecisionForm>
          <DecisionForm
            job={job}
            entered={again}
            kind="go-ahead-denied"
            title="deciding-word-deny"
            enter="deciding-word-deny-enter"
            said={(typed) => ({ what: { goAhead: id, reason: typed("reason") } })}
          >
            <Typed name="reason" word="deciding-word-deny-how" long={true} />
          </DecisionForm>
        </article>
      ))}
    </section>
  );
}
