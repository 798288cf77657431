import type { Clearance } from "../../job/index.ts";
import type { Sayer } from "../../record/index.ts";
import { coveredDoubted, coveredOnNotYet, coveredOnWord, coveredUnsaid, exceptionsOf } from "./counts.ts";
import type { JobNow } from "./job-now.ts";
import { Section } from "./section.tsx";
import { Sign } from "./sign.tsx";
import { useSpeaking } from "./speaking.ts";
import { FindingList } from "./steps.tsx";
import { counted } from "./words/index.ts";

const oddCoverings = [
  { word: "covered-on-not-yet", shape: "outside", is: coveredOnNotYet },
  { word: "covered-unsaid", shape: "undecided", is: coveredUnsaid },
  { word: "later-doubted", shape: "undecided", is: coveredDoubted },
  { word: "covered-on-word", shape: "word", is: coveredOnWord },
] as const;

interface Told {
  readonly now: JobNow;
  readonly sayer: Sayer;
}

/** Coverings that did not go over a clearance that still holds. */
function Coverings({ now, sayer, odd }: Told & { readonly odd: readonly Clearance[] }) {
  const { say } = useSpeaking();
  const act = (covering: string): string => sayer.words(now.state.sheet?.coverings.find(({ id }) => id === covering)?.title);
  return (
    <ul class="findings">
      {oddCoverings.flatMap(({ word, shape, is }) =>
        odd.filter(is).map(({ covering }) => (
          <li key={`${word} ${covering}`}>
            <Sign shape={shape} />
            <strong>{say(word, { act: act(covering) })}</strong>
          </li>
        )),
      )}
    </ul>
  );
}

/** What to read first: coverings that went over no clear, then findings that are not plainly as asked, then how much is missing. */
export function Exceptions({ now, sayer }: Told) {
  const { say } = useSpeaking();
  const { found, missing } = exceptionsOf(now.findings);
  const odd = now.clearances.filter((clearance) => oddCoverings.some(({ is }) => is(clearance)));
  if (found.length + missing.length + odd.length === 0)
    return (
      <Section title="exceptions" look="exceptions">
        <p>{say(now.findings.length === 0 ? "exceptions-nothing-yet" : "exceptions-none")}</p>
      </Section>
    );
  return (
    <Section title="exceptions" look="exceptions">
      {odd.length > 0 && <Coverings now={now} sayer={sayer} odd={odd} />}
      {found.length > 0 && <FindingList findings={found} sayer={sayer} />}
      {missing.length > 0 && (
        <details>
          <summary class="target">
            <Sign shape="missing" />
            <span>{counted(say, "not-entered", missing.length)}</span>
          </summary>
          <FindingList findings={missing} sayer={sayer} />
        </details>
      )}
    </Section>
  );
}
