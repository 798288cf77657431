import { useState } from "preact/hooks";
import {
  jobLedgerOf,
  type KitCard,
  movedToVersion,
  type ToleranceSheet,
  type VersionMove,
  type VersionOffered,
} from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import type { EntryMade, WireProblem } from "../../../wire/index.ts";
import { tell } from "../../parts/edge.ts";
import type { JobNow } from "../../parts/job-now.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import { CardDifferences } from "../kits/differences.tsx";
import { versionContent } from "../opening-sheet.ts";
import { Differences } from "../sheets/changes.tsx";
import { WouldChange } from "./would-change.tsx";

/** A newer version of something that the job took over. */
export interface Newer extends Omit<VersionOffered, "content"> {
  readonly title: string;
  readonly held: Json | undefined;
}

const newId = (): string => crypto.randomUUID().replaceAll("-", "");

type State =
  | { readonly is: "ready" | "looking" | "moving" | "away" }
  | { readonly is: "shown"; readonly content: Json; readonly move: VersionMove }
  | { readonly is: "refused"; readonly problem: WireProblem };

/** One newer version: what would change, and then the act. */
export function OfferedVersion({ now, newer, moved }: { readonly now: JobNow; readonly newer: Newer; readonly moved: () => void }) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  // sent again after a break it is the same entry
  const [id] = useState(newId);
  const { title, held, ...version } = newer;
  const look = (): void => {
    setState({ is: "looking" });
    void versionContent<Json>(version.digest).then((content) => {
      if (content === undefined) setState({ is: "away" });
      else setState({ is: "shown", content, move: movedToVersion(jobLedgerOf(now.ledger), { ...version, content }, Date.now()) });
    });
  };
  const move = (): void => {
    if (state.is === "moving") return;
    setState({ is: "moving" });
    void tell<EntryMade>(`/api/jobs/${now.view.job}/versions`, { id, digest: version.digest }).then((answer) =>
      answer.is === "given" ? moved() : setState(answer),
    );
  };
  return (
    <section>
      <h3>{say("job-versions-newer", { title })}</h3>
      <button type="button" class="target" onClick={look}>
        {say("job-versions-look")}
      </button>
      {state.is === "shown" && (
        <div class="would-change">
          <h4>{say("job-versions-differences")}</h4>
          {version.thing === "sheet" ? (
            <Differences before={held as unknown as ToleranceSheet} after={state.content as unknown as ToleranceSheet} />
          ) : (
            <CardDifferences
              before={held as unknown as KitCard}
              after={state.content as unknown as KitCard}
              figures={now.state.sheet?.figures ?? []}
            />
          )}
          <WouldChange now={now} move={state.move} />
          <button type="button" class="target main" onClick={move}>
            {say("job-versions-move", { title })}
          </button>
        </div>
      )}
      <div role="status" class={state.is === "away" || state.is === "refused" ? "answer refused" : "answer"}>
        {state.is === "moving" && <p>{say("job-versions-moving")}</p>}
        {state.is === "away" && <p>{say("versions-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
    </section>
  );
}
