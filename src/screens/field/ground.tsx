import { lazy, Suspense } from "preact/compat";
import { useCallback, useEffect, useState } from "preact/hooks";
import { Link } from "../parts/link.tsx";
import { jobPath } from "../parts/place.ts";
import { NotJudged } from "../parts/section.tsx";
import { useSpeaking } from "../parts/speaking.ts";
import { CoveringState } from "./covering-state.tsx";
import { PhoneFrame } from "./frame.tsx";
import { type Glance, type JobHead, useKeep } from "./keep/index.ts";
import { useMinute } from "./minute.ts";
import { inOrder } from "./next.ts";
import { useBackToCamera } from "./picture/camera.ts";

const TonightReminder = lazy(() => import("./numbers/reminder.tsx").then((page) => page.TonightReminder));

function JobInGround({ head, glance: { open, zone } }: { readonly head: JobHead; readonly glance: Glance }) {
  const { say } = useSpeaking();
  return (
    <li>
      <Link to={jobPath(head.job)} class="job-link">
        <h2>{head.title}</h2>
        {head.ownNumber !== undefined && <p class="own-number">{head.ownNumber}</p>}
        {open.map((line) => (
          <CoveringState key={line.covering} line={line} zone={zone} />
        ))}
        {open.length === 0 && <p>{say("covered-all")}</p>}
      </Link>
    </li>
  );
}

/**
 * The crew's first page: whatever is open in the ground, wherever it is, what is covered next on top. Drawn from what the phone kept of
 * it while that is so; else once the jobs are judged anew, and nothing is said of any of them before.
 */
export function OpenGround() {
  const { say } = useSpeaking();
  const { keep, state } = useKeep();
  useBackToCamera();
  // drawn again when something is met that is waited for
  useMinute(useCallback(() => keep.glances(keep.now()).map(({ glance }) => glance?.until), [keep]));
  const all = keep.glances(keep.now());
  const known = all.flatMap(({ head, glance }) => (glance === undefined ? [] : [{ head, title: head.title, glance }]));
  const isKnown = known.length === all.length || state.whole;
  const isDrawn = isKnown && known.length > 0;
  // an effect comes after the jobs are drawn: what the evening asks, and the jobs themselves, are no part of the first screen
  const [drawn, setDrawn] = useState(false);
  useEffect(() => {
    void keep.whole().then(
      () => setDrawn(isDrawn),
      () => {},
    );
  }, [keep, isDrawn]);
  return (
    <PhoneFrame title={say("open-in-the-ground")}>
      {all.length === 0 && <p>{say(state.readAt === undefined ? "reading-first" : "no-jobs")}</p>}
      <NotJudged />
      {drawn && (
        <Suspense fallback={null}>
          <TonightReminder />
        </Suspense>
      )}
      <ul class="jobs">
        {isKnown && inOrder(known).map(({ head, glance }) => <JobInGround key={head.job} head={head} glance={glance} />)}
      </ul>
    </PhoneFrame>
  );
}
