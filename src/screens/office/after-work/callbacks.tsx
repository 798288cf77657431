import { callbacksOf, symptoms } from "../../../job/index.ts";
import { makeCallbackSayer } from "../../../record/index.ts";
import { JobPage, type JobTold } from "../../parts/job-page.tsx";
import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { moneyText, timeText } from "./costs.ts";
import { type OneCallback, OpenCallback } from "./open-callback.tsx";
import { SaidForm } from "./said-form.tsx";

/** The callbacks of a job: opened with a symptom, what to look at first, closed with what was found. */
export const CallbacksPage = ({ job }: { readonly job: string }) => (
  <JobPage job={job}>{(told) => <Callbacks job={job} told={told} />}</JobPage>
);

interface Told {
  readonly job: string;
  readonly told: JobTold;
}

function Callbacks({ job, told }: Told) {
  const { say, session } = useSpeaking();
  const sayer = makeCallbackSayer(told.sayer, session.language);
  const callbacks = callbacksOf(told.now.state);
  return (
    <section class="after-work">
      <h2>{say("callbacks-title")}</h2>
      <p>{say("callbacks-none-planned")}</p>
      <SaidForm
        job={job}
        kind="callback-opened"
        title="callbacks-new"
        enter="callbacks-new-enter"
        fields={[
          {
            name: "symptom",
            word: "callbacks-symptom",
            choices: symptoms.map((value) => ({ value, title: sayer.symptom(value) })),
            required: true,
          },
          { name: "said", word: "callbacks-said", reads: "long" },
          { name: "day", word: "callbacks-day", reads: "day" },
          { name: "name", word: "callbacks-name", who: true },
          { name: "contact", word: "callbacks-contact", who: true },
        ]}
      />
      {callbacks.length === 0 && <p>{say("callbacks-none")}</p>}
      {[...callbacks].reverse().map((callback) => (
        <One key={callback.entry} callback={callback} sayer={sayer} job={job} told={told} />
      ))}
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}

function One(props: OneCallback) {
  const { say } = useSpeaking();
  const { callback, sayer, told } = props;
  return (
    <article class="callback" id={callback.entry}>
      <h3>{sayer.symptom(callback.symptom)}</h3>
      <p>
        {say("callbacks-opened-at", { time: told.sayer.moment(callback.at) })}{" "}
        {say(callback.closed ? "callbacks-closed" : "callbacks-open")}
      </p>
      {callback.said !== undefined && <blockquote>{callback.said}</blockquote>}
      {callback.closed ? <Closed {...props} /> : <OpenCallback {...props} />}
    </article>
  );
}

function Closed({ callback: { closed }, sayer, told }: OneCallback) {
  const { say, session } = useSpeaking();
  if (closed === undefined) return null;
  const { borneBy: by, minutes, travelMinutes, partsCost, recovered } = closed;
  const costs = [
    ...(by === undefined ? [] : [sayer.text(`borne-${by}`)]),
    ...(minutes === undefined ? [] : [say("callbacks-minutes", { time: timeText(minutes) })]),
    ...(travelMinutes === undefined ? [] : [say("callbacks-travel", { time: timeText(travelMinutes) })]),
    ...(partsCost === undefined ? [] : [say("callbacks-parts", { money: moneyText(partsCost, session.language) })]),
    ...(recovered === undefined ? [] : [say("callbacks-recovered", { money: moneyText(recovered, session.language) })]),
  ];
  return (
    <ul class="shown">
      <li>{told.sayer.moment(closed.at)}</li>
      {[...sayer.closed(closed), ...costs].map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
