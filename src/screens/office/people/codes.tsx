import { useState } from "preact/hooks";
import type { JoinCodes, People, WireProblem } from "../../../wire/index.ts";
import { tell } from "../../parts/edge.ts";
import { momentHere, refusalText, useSpeaking } from "../../parts/speaking.ts";

interface GivenCodesProps {
  readonly codes: JoinCodes["codes"];
  readonly people: People["people"];
  readonly again: () => void;
}

/** The codes that were given to the crew, and what became of each. */
export function GivenCodes({ codes, people, again }: GivenCodesProps) {
  const { say, session } = useSpeaking();
  const [problem, setProblem] = useState<WireProblem>();
  const moment = (at: number): string => momentHere(at, session.language);
  const withdraw = async (code: string): Promise<void> => {
    const answer = await tell<undefined>(`/api/codes/${code}/withdraw`);
    setProblem(answer.is === "refused" ? answer.problem : undefined);
    again();
  };
  return (
    <section class="access-part">
      <h2>{say("people-codes")}</h2>
      {codes.length === 0 && <p>{say("people-codes-none")}</p>}
      <ul class="findings access-list">
        {codes.map(({ code, person, made, ends, is, used }) => (
          <li key={code}>
            <span>
              {say("people-code-line", {
                name: people.find((one) => one.person === person)?.name ?? say("someone"),
                made: moment(made),
                state: say(`people-code-${is}`, { time: moment(used ?? ends) }),
              })}
            </span>
            {is === "open" && (
              <button type="button" class="target" onClick={() => void withdraw(code)}>
                {say("people-code-withdraw")}
              </button>
            )}
          </li>
        ))}
      </ul>
      <div role="status" class={problem === undefined ? "answer" : "answer refused"}>
        {problem !== undefined && <p>{refusalText(problem, session)}</p>}
      </div>
    </section>
  );
}
