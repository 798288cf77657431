import type { Sayer } from "../../record/index.ts";
import { coveredOnNotYet, exceptionsOf } from "./counts.ts";
import type { JobNow } from "./job-now.ts";
import { Section } from "./section.tsx";
import { Sign } from "./sign.tsx";
import { useSpeaking } from "./speaking.ts";
import { FindingList } from "./steps.tsx";

/** What to read first: coverings that went over a not yet, then every finding that is not plainly within. */
export function Exceptions({ now, sayer }: { readonly now: JobNow; readonly sayer: Sayer }) {
  const { say } = useSpeaking();
  const findings = exceptionsOf(now.findings);
  const act = (covering: string): string => sayer.words(now.state.sheet?.coverings.find(({ id }) => id === covering)?.title);
  const onNotYet = now.clearances.filter(coveredOnNotYet);
  const doubted = now.clearances.filter((clearance) => clearance.covered?.laterDoubted === true);
  if (findings.length + onNotYet.length + doubted.length === 0)
    return (
      <Section title="exceptions">
        <p>{say("exceptions-none")}</p>
      </Section>
    );
  return (
    <Section title="exceptions" look="exceptions">
      <ul class="findings">
        {onNotYet.map(({ covering }) => (
          <li key={covering}>
            <Sign shape="outside" />
            <strong>{say("covered-on-not-yet", { act: act(covering) })}</strong>
          </li>
        ))}
        {doubted.map(({ covering }) => (
          <li key={covering}>
            <Sign shape="undecided" />
            <strong>{say("later-doubted", { act: act(covering) })}</strong>
          </li>
        ))}
      </ul>
      <FindingList findings={findings} sayer={sayer} />
    </Section>
  );
}
