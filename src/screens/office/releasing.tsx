import { useState } from "preact/hooks";
import type { RecordList, ReleaseList, ReleaseMade, WireProblem } from "../../wire/index.ts";
import { ask, tell } from "../parts/edge.ts";
import type { JobTold } from "../parts/job-page.tsx";
import { useNews } from "../parts/news.ts";
import { momentHere, refusalText, useSpeaking } from "../parts/speaking.ts";
import { Typed } from "./deciding/decision-form.tsx";
import { type Addressee, receiverOf } from "./message/addressee.ts";
import { MakeMessage } from "./message/index.tsx";

type State =
  | { readonly is: "ready" | "releasing" | "away" }
  | { readonly is: "made"; readonly made: ReleaseMade }
  | { readonly is: "refused"; readonly problem: WireProblem };

const receiverSaid = ({ name, address }: Addressee): string => [name, address].filter((part) => part !== undefined).join(", ");

interface ReleasingProps {
  readonly records: RecordList["records"];
  readonly job: string;
  readonly now: JobTold["now"];
}

/** Releases the newest record of the customer's edition: a link that is shown once, and those that were given before. */
export function Releasing({ records, job, now }: ReleasingProps) {
  const [newest] = records.filter(({ edition }) => edition === "customer").sort((a, b) => b.version - a.version);
  return newest === undefined ? null : (
    <ReleaseOf key={newest.record} record={newest.record} version={newest.version} job={job} now={now} />
  );
}

interface ReleaseProps extends Omit<ReleasingProps, "records"> {
  readonly record: string;
  readonly version: number;
}

function ReleaseOf({ record, version, job, now: { state: known } }: ReleaseProps) {
  const { say, session } = useSpeaking();
  const at = `/api/records/${record}/releases`;
  const news = useNews(`releases ${record}`, () => ask<ReleaseList>(at));
  const [state, setState] = useState<State>({ is: "ready" });
  const release = async (form: HTMLFormElement): Promise<void> => {
    const to = String(new FormData(form).get("to")).trim();
    setState({ is: "releasing" });
    const answer = await tell<ReleaseMade>(at, { to });
    setState(answer.is === "given" ? { is: "made", made: answer.value } : answer);
    if (answer.is === "given") form.reset();
    news.again();
  };
  const end = async (link: string): Promise<void> => {
    const answer = await tell<undefined>(`${at}/${link}/end`);
    setState(answer.is === "given" ? { is: "ready" } : answer);
    news.again();
  };
  return (
    <section class="others">
      <details class="decision">
        <summary class="target">{say("releasing-title", { version })}</summary>
        <form
          class="issue"
          onSubmit={(event) => {
            event.preventDefault();
            if (state.is !== "releasing") void release(event.currentTarget as HTMLFormElement);
          }}
        >
          <p>{say("releasing-how")}</p>
          <Typed name="to" word="releasing-to" value={receiverSaid(receiverOf(known))} />
          <button type="submit" class="target main" aria-disabled={state.is === "releasing"}>
            {say("releasing-do")}
          </button>
        </form>
      </details>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {state.is === "made" && (
          <>
            <p>{say("releasing-made")}</p>
            <p>
              <output class="others-link">{new URL(state.made.link, location.href).href}</output>
            </p>
            <MakeMessage
              key={state.made.link}
              job={job}
              kind="released"
              link={state.made.link}
              to={receiverOf(known)}
              language={known.opened?.language ?? session.language}
            />
          </>
        )}
        {state.is === "away" && <p>{say("after-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
      <ul class="findings">
        {(news.value?.releases ?? []).map(({ release: link, to, released, ended }) => (
          <li key={link}>
            <span>
              {say(ended === undefined ? "releasing-open" : "releasing-ended", {
                to,
                time: momentHere(ended ?? released, session.language),
              })}{" "}
              {ended === undefined && (
                <button type="button" class="target" onClick={() => void end(link)}>
                  {say("releasing-end")}
                </button>
              )}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
