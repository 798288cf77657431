import { borneBy, type Callback, type CheckFirst, checkFirst, openGround, sitePlaced } from "../../../job/index.ts";
import type { CallbackSayer } from "../../../record/index.ts";
import type { JobTold } from "../../parts/job-page.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { SaidForm } from "./said-form.tsx";

export interface OneCallback {
  readonly job: string;
  readonly told: JobTold;
  readonly callback: Callback;
  readonly sayer: CallbackSayer;
}

/** An open callback: cautions, what to ask and to look at first, digging, and its end. */
export function OpenCallback(props: OneCallback) {
  const { say } = useSpeaking();
  const { callback, sayer, told, job } = props;
  const { state } = told.now;
  const { sheet } = state;
  const first = checkFirst(state, callback.symptom, callback);
  const coverings = sheet?.coverings ?? [];
  const actOf = (id: string): string => told.sayer.words(coverings.find((one) => one.id === id)?.title);
  const cautions = (first?.asked.cautions ?? []).flatMap((id) => sheet?.cautions.find((one) => one.id === id) ?? []);
  const open = new Set(openGround(state).map(({ id }) => id));
  const choices = coverings.filter(({ id }) => !open.has(id)).map(({ id, title }) => ({ value: id, title: told.sayer.words(title) }));
  return (
    <>
      {(cautions.length === 0 || sayer.isForElectrician(callback.symptom)) && <p class="caution">{sayer.caution(callback.symptom)}</p>}
      {cautions.map(({ id, text }) => (
        <p key={id} class="caution">
          {told.sayer.words(text)}
        </p>
      ))}
      {first === undefined ? (
        <p>{say("callbacks-nothing-known")}</p>
      ) : (
        <>
          <h4>{say("callbacks-ask")}</h4>
          <ul class="shown">
            {first.asked.ask.map((question) => (
              <li key={question.en}>{told.sayer.words(question)}</li>
            ))}
          </ul>
          <h4>{say("callbacks-look")}</h4>
          <p>{say("callbacks-look-how")}</p>
          <ol class="shown callback-looks">
            {first.lines.map((line) => (
              <Look key={`${line.about.check ?? line.about.item} ${line.about.tag ?? ""}`} line={line} actOf={actOf} {...props} />
            ))}
          </ol>
        </>
      )}
      {callback.opened.map(({ entry, covering, covered }) => (
        <p key={entry}>{say(covered ? "callbacks-covered-again" : "callbacks-still-open", { act: actOf(covering) })}</p>
      ))}
      <SaidForm
        job={job}
        kind="opened-up-again"
        title="callbacks-dig"
        enter="callbacks-dig-enter"
        fields={[
          { name: "covering", word: "callbacks-dig-which", choices, required: true },
          { name: "reason", word: "callbacks-dig-reason", required: true },
        ]}
        more={async () => ({ exposed: "all" })}
      />
      <SaidForm
        job={job}
        kind="callback-closed"
        title="callbacks-close"
        enter="callbacks-close-enter"
        fields={[
          { name: "cause", word: "callbacks-cause", reads: "long", required: true },
          {
            name: "confirmed",
            word: "callbacks-confirmed",
            reads: "yes",
            choices: (["yes", "no"] as const).map((value) => ({ value, title: say(`callbacks-confirmed-${value}`) })),
            required: true,
          },
          { name: "supposed", word: "callbacks-supposed" },
          { name: "part", word: "callbacks-part" },
          { name: "borneBy", word: "callbacks-borne", choices: borneBy.map((value) => ({ value, title: sayer.text(`borne-${value}`) })) },
          { name: "minutes", word: "callbacks-minutes-typed", reads: "hours" },
          { name: "travelMinutes", word: "callbacks-travel-typed", reads: "hours" },
          { name: "partsCost", word: "callbacks-parts-typed", reads: "money" },
          { name: "recovered", word: "callbacks-recovered-typed", reads: "money" },
        ]}
        more={async () => ({ callback: callback.entry })}
      />
    </>
  );
}

function Look({ line, actOf, sayer, told }: OneCallback & { readonly line: CheckFirst; readonly actOf: (id: string) => string }) {
  const { why, finding, room, covering, located } = line;
  const isTied = sitePlaced(told.now.state, "all").marks.length > 0;
  const isAsked = told.sayer.isAsked(finding);
  return (
    <li>
      <b>{told.sayer.words(why)}.</b>
      <p>{told.sayer.finding(finding)}</p>
      {room && !isAsked && <p>{sayer.room(room)}</p>}
      {covering !== undefined && <p>{sayer.text("lies-under", { act: actOf(covering) })}</p>}
      {isTied && located.length > 0 && (
        <ul>
          {located
            .filter(({ ties }) => ties.length > 0)
            .map((thing) => (
              <li key={thing.key}>{sayer.located(thing)}</li>
            ))}
        </ul>
      )}
    </li>
  );
}
