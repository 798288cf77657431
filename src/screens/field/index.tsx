import { lazy, Suspense } from "preact/compat";
import { DoneCovering, NothingOpen } from "../parts/covering.tsx";
import { BeforehandViews, HandingOverView } from "../parts/handing-over.tsx";
import { Link } from "../parts/link.tsx";
import { NotJudged, Section } from "../parts/section.tsx";
import { useSpeaking } from "../parts/speaking.ts";
import { countsText } from "../parts/steps.tsx";
import { HeldLines } from "./covering/held.tsx";
import { LargeClearance } from "./covering/large.tsx";
import { CoveringState } from "./covering-state.tsx";
import { NotHere, PhoneFrame } from "./frame.tsx";
import { glanceLine } from "./keep/book.ts";
import { openFirst } from "./next.ts";
import { burstPath, coverPath, setOutPath, stepPath, tonightPath, waterPath, wherePath } from "./paths.ts";
import { ReworkWanted } from "./reading/rework-asked.tsx";
import { type ToldOnPhone, useTold } from "./told.ts";

const AgainAsked = lazy(() => import("./study/index.tsx").then(({ againAsked }) => againAsked()));
const RightJob = lazy(() => import("./picture/right-job.tsx").then((page) => page.RightJob));

/** The next covering with its clearance, what holds it, and the shutter: on one screen. */
function Next({ job, told: { now, sayer, book } }: { readonly job: string; readonly told: ToldOnPhone }) {
  const { say } = useSpeaking();
  const [next, ...rest] = openFirst(now.clearances);
  if (next === undefined)
    return (
      <>
        <NothingOpen />
        <NotJudged />
      </>
    );
  return (
    <section class="next" aria-label={say("open-in-the-ground")}>
      <LargeClearance clearance={next} sayer={sayer} unseen={book.unseen.length} />
      <HeldLines clearance={next} job={job} now={now} sayer={sayer} />
      <div class="shutter-row">
        <Link to={burstPath(job)} class="target main shutter">
          {say("take-pictures")}
        </Link>
        <Link to={coverPath(job, next.covering)} class="target">
          {say(next.lines.length > 3 ? "all-that-holds" : "cover-now", { count: next.lines.length })}
        </Link>
      </div>
      <NotJudged />
      {rest.length > 0 && (
        <ul class="choices">
          {rest.map((clearance) => (
            <li key={clearance.covering}>
              <Link to={coverPath(job, clearance.covering)} class="target">
                <CoveringState line={glanceLine(now.state.sheet, clearance)} zone={now.state.opened?.zone ?? "UTC"} />
              </Link>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** The steps, each with what its findings are counted as. */
function StepLinks({ job, told: { now, sayer } }: { readonly job: string; readonly told: ToldOnPhone }) {
  const { say } = useSpeaking();
  const steps = (now.state.sheet?.steps ?? []).filter(({ office }) => office !== true);
  return (
    <Section title="steps">
      <ul class="choices step-links">
        {steps.map((step) => {
          const found = now.findings.filter((finding) => finding.step === step.id);
          return (
            <li key={step.id}>
              <Link to={stepPath(job, step.id)} class="target">
                <span class="balloon">{step.number}</span>
                <span class="step-name">
                  <b>{sayer.words(step.title)}</b>
                  <span>{countsText(found, say)}</span>
                </span>
              </Link>
            </li>
          );
        })}
      </ul>
    </Section>
  );
}

/** A job for the crew: what is covered next and whether it may be, the numbers to work by, then the steps. From the phone's own store. */
export function FieldJob({ job }: { readonly job: string }) {
  const { say } = useSpeaking();
  const told = useTold(job);
  if (told === undefined) return <NotHere />;
  const { now, sayer } = told;
  const done = now.clearances.filter(({ covered }) => covered !== undefined);
  return (
    <PhoneFrame title={now.view.title} back={{ to: "/", title: say("open-in-the-ground") }}>
      <Suspense fallback={null}>
        <RightJob job={job} told={told} />
      </Suspense>
      <Next job={job} told={told} />
      <ReworkWanted job={job} told={told} />
      <Suspense fallback={null}>
        <AgainAsked job={job} told={told} />
      </Suspense>
      <nav class="numbers" aria-label={say("numbers")}>
        <Link to={setOutPath(job)}>{say("numbers-set-out")}</Link>
        <Link to={waterPath(job)}>{say("numbers-water")}</Link>
        <Link to={tonightPath(job)}>{say("numbers-tonight")}</Link>
        <Link to={wherePath(job)}>{say("numbers-where")}</Link>
      </nav>
      <StepLinks job={job} told={told} />
      <BeforehandViews now={now} sayer={sayer} />
      <HandingOverView now={now} sayer={sayer} />
      {done.length > 0 && (
        <Section title="covered">
          {done.map((clearance) => (
            <DoneCovering key={clearance.covering} clearance={clearance} now={now} sayer={sayer} />
          ))}
        </Section>
      )}
    </PhoneFrame>
  );
}
