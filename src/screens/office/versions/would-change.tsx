import { useMemo } from "preact/hooks";
import type { VersionMove } from "../../../job/index.ts";
import { makeSayer } from "../../../record/index.ts";
import { type JobNow, speakingOf } from "../../parts/job-now.ts";
import type { JobTold } from "../../parts/job-page.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { Lines } from "../sheets/changes.tsx";

/** Findings and coverings that would read otherwise, each as it reads now and as it would. */
export function WouldChange({ now, move }: { readonly now: JobNow; readonly move: VersionMove }) {
  const { say, session } = useSpeaking();
  const [was, is] = useMemo(() => {
    const speaking = speakingOf(now, session.language, session.units, say("someone"));
    return [move.before, move.after].map(({ sheet }) => makeSayer({ ...speaking, ...(sheet ? { sheet } : {}) })) as [
      JobTold["sayer"],
      JobTold["sayer"],
    ];
  }, [move, now, session, say]);
  const lines = move.findings.map(({ before, after }) => {
    if (before === undefined) return say("job-versions-came", { now: after ? is.finding(after) : "" });
    if (after === undefined) return say("job-versions-gone", { was: was.finding(before) });
    return say("job-versions-was-now", { was: was.finding(before), now: is.finding(after) });
  });
  const coverings = move.coverings.map(({ before, after }) => {
    if (before === undefined) return say("job-versions-came", { now: after ? is.clearance(after) : "" });
    if (after === undefined) return say("job-versions-gone", { was: was.clearance(before) });
    return say("job-versions-was-now", { was: was.clearance(before), now: is.clearance(after) });
  });
  const left = move.left.map((about) => was.title(about));
  const nothing = lines.length + coverings.length + left.length === 0;
  return (
    <>
      {nothing && <p>{say("job-versions-nothing")}</p>}
      {coverings.length > 0 && <h4>{say("job-versions-coverings")}</h4>}
      <Lines lines={coverings} />
      {lines.length > 0 && <h4>{say("job-versions-findings")}</h4>}
      <Lines lines={lines} />
      {left.length > 0 && <h4>{say("job-versions-left")}</h4>}
      <Lines lines={left} />
    </>
  );
}
