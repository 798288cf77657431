import { lazy, Suspense } from "preact/compat";
import { useEffect, useState } from "preact/hooks";
import { Link } from "../parts/link.tsx";
import { jobPath } from "../parts/place.ts";
import { NotJudged } from "../parts/section.tsx";
import { useSpeaking } from "../parts/speaking.ts";
import { CoveringState } from "./covering-state.tsx";
import { PhoneFrame } from "./frame.tsx";
import { type Book, useKeep } from "./keep/index.ts";
import { inOrder, openFirst } from "./next.ts";
import { useBackToCamera } from "./picture/camera.ts";
import { useTold } from "./told.ts";

const TonightReminder = lazy(() => import("./numbers/reminder.tsx").then((page) => page.TonightReminder));

function JobInGround({ book }: { readonly book: Book }) {
  const { say } = useSpeaking();
  const told = useTold(book.kept.job);
  if (told === undefined) return null;
  const { now, sayer } = told;
  const open = openFirst(now.clearances);
  return (
    <li>
      <Link to={jobPath(book.kept.job)} class="job-link">
        <h2>{book.kept.title}</h2>
        {book.kept.ownNumber !== undefined && <p class="own-number">{book.kept.ownNumber}</p>}
        {open.map((clearance) => (
          <CoveringState key={clearance.covering} clearance={clearance} now={now} sayer={sayer} />
        ))}
        {open.length === 0 && <p>{say("covered-all")}</p>}
      </Link>
    </li>
  );
}

/** The crew's first page: whatever is open in the ground, wherever it is, what is covered next on top. Drawn from the phone's own store. */
export function OpenGround() {
  const { say } = useSpeaking();
  const { keep, state } = useKeep();
  useBackToCamera();
  const books = inOrder(state.books, keep.now());
  const hasJobs = books.length > 0;
  // an effect comes after the jobs are drawn: what the evening asks is no part of the first screen
  const [drawn, setDrawn] = useState(false);
  useEffect(() => setDrawn(hasJobs), [hasJobs]);
  return (
    <PhoneFrame title={say("open-in-the-ground")}>
      {!hasJobs && <p>{say(state.readAt === undefined ? "reading-first" : "no-jobs")}</p>}
      <NotJudged />
      {drawn && (
        <Suspense fallback={null}>
          <TonightReminder />
        </Suspense>
      )}
      <ul class="jobs">
        {books.map((book) => (
          <JobInGround key={book.kept.job} book={book} />
        ))}
      </ul>
    </PhoneFrame>
  );
}
