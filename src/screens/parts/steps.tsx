import type { Finding } from "../../job/index.ts";
import type { Sayer } from "../../record/index.ts";
import { countedAs, findingCounts, isForElectrician } from "./counts.ts";
import type { JobNow } from "./job-now.ts";
import { PictureView } from "./picture.tsx";
import type { PictureShown } from "./pictures.ts";
import { shapeOfFinding } from "./shapes.ts";
import { Sign } from "./sign.tsx";
import { useSpeaking } from "./speaking.ts";
import type { Say } from "./words/index.ts";

interface FindingListProps {
  readonly findings: readonly Finding[];
  readonly sayer: Sayer;
  /** What photos measured beside a finding, in words. */
  readonly photos?: ReadonlyMap<Finding, readonly string[]>;
}

/** Findings with their signs and sentences. */
export const FindingList = ({ findings, sayer, photos }: FindingListProps) => (
  <ul class="findings">
    {findings.map((finding) => (
      <li key={`${finding.of} ${finding.check} ${finding.tag ?? ""}`}>
        <Sign shape={shapeOfFinding(finding)} quiet={isForElectrician(finding) || finding.weight !== "holds" || finding.by !== undefined} />
        <span>
          {sayer.finding(finding)}
          {photos?.get(finding)?.map((said) => (
            <span key={said} class="in-photo">
              {said}
            </span>
          ))}
        </span>
      </li>
    ))}
  </ul>
);

/** '5 within, 2 not taken': what the findings of a step are counted as, in words. */
export function countsText(findings: readonly Finding[], say: Say): string {
  const counts = findingCounts(findings);
  return countedAs
    .filter((as) => counts[as] > 0)
    .map((as) => `${counts[as]} ${say(`counted-${as}`)}`)
    .join(", ");
}

interface StepsProps {
  readonly now: JobNow;
  readonly sayer: Sayer;
  readonly pictures: readonly PictureShown[];
  /** Leads to the photos as they were taken. */
  readonly originals: boolean;
  readonly opened: (findings: readonly Finding[]) => boolean;
  readonly photos: ReadonlyMap<Finding, readonly string[]>;
}

/** Every step of the job that has findings or pictures: cautions first, then what was found, then what can be seen. */
export function Steps({ now, sayer, pictures, originals, opened, photos }: StepsProps) {
  const { say } = useSpeaking();
  const sheet = now.state.sheet;
  const steps = (sheet?.steps ?? []).map((step) => ({
    step,
    findings: now.findings.filter((finding) => finding.step === step.id),
    seen: pictures.filter((picture) => picture.step === step.id),
    cautions: step.cautions.map((id) => sayer.words(sheet?.cautions.find((caution) => caution.id === id)?.text)),
  }));
  return (
    <section class="steps">
      <h2>{say("steps")}</h2>
      {steps
        .filter(({ findings, seen }) => findings.length + seen.length > 0)
        .map(({ step, findings, seen, cautions }) => (
          <details key={step.id} class="step" open={opened(findings)}>
            <summary class="target">
              <span class="balloon">{step.number}</span>
              <div class="step-name">
                <h3>{sayer.words(step.title)}</h3>
                <span>{countsText(findings, say)}</span>
              </div>
            </summary>
            <div class="inside">
              {cautions.length > 0 && (
                <div class="cautions">
                  <h4>{say("cautions")}</h4>
                  {cautions.map((caution) => (
                    <p key={caution}>{caution}</p>
                  ))}
                </div>
              )}
              <FindingList findings={findings} sayer={sayer} photos={photos} />
              {seen.length > 0 && (
                <div class="pictures">
                  {seen.map((picture) => (
                    <PictureView key={picture.entry} picture={picture} sayer={sayer} originals={originals} job={now.view.job} />
                  ))}
                </div>
              )}
            </div>
          </details>
        ))}
    </section>
  );
}
