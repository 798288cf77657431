import { DoneCovering, NothingOpen, OpenCovering } from "../parts/covering.tsx";
import { BeforehandViews, HandingOverView } from "../parts/handing-over.tsx";
import { picturesOf } from "../parts/pictures.ts";
import { NotJudged, Section } from "../parts/section.tsx";
import { useSpeaking } from "../parts/speaking.ts";
import { Steps } from "../parts/steps.tsx";
import { NotHere, PhoneFrame } from "./frame.tsx";
import { openFirst } from "./next.ts";
import { useTold } from "./told.ts";

/** A job for the crew: first what is open and whether it may be covered, then the steps. Drawn from the phone's own store. */
export function FieldJob({ job }: { readonly job: string }) {
  const { say } = useSpeaking();
  const told = useTold(job);
  if (told === undefined) return <NotHere />;
  const { now, sayer } = told;
  const open = openFirst(now.clearances);
  const done = now.clearances.filter(({ covered }) => covered !== undefined);
  return (
    <PhoneFrame title={now.view.title} back={{ to: "/", title: say("open-in-the-ground") }}>
      <Section title="open-in-the-ground" look="open-ground">
        <NotJudged />
        {open.length === 0 && <NothingOpen />}
        {open.map((clearance) => (
          <OpenCovering key={clearance.covering} clearance={clearance} now={now} sayer={sayer} />
        ))}
      </Section>
      <BeforehandViews now={now} sayer={sayer} />
      <Steps now={now} sayer={sayer} pictures={picturesOf(now, sayer)} originals={false} opened={() => false} />
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
