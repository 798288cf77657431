import { type About, type ReworkAsked as Asked, type Instance, reworkAsked, reworkAskedOf } from "../../../job/index.ts";
import { behindOf } from "../../parts/job-now.ts";
import { Link } from "../../parts/link.tsx";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { noCovering, takePath, wayPath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";

interface AskedProps {
  readonly job: string;
  readonly told: ToldOnPhone;
}

function Words({ told: { now, sayer }, asked: { entry, reason, at } }: Pick<AskedProps, "told"> & { readonly asked: Asked }) {
  const { say } = useSpeaking();
  return <>{say("rework-asked-says", { name: behindOf(now, say("someone"))(entry).name, time: sayer.moment(at), reason })}</>;
}

/** At the item: what the office wants done over and why, until it is entered as reworked. */
export function ReworkAsked({ job, told, item, tag }: AskedProps & Instance) {
  const { say } = useSpeaking();
  const asked = reworkAskedOf(told.now.state, tag === undefined ? { item } : { item, tag });
  return (
    <>
      {asked.map((one) => (
        <div key={one.entry} class="stands-out" role="status">
          <p>
            <b>{say("rework-asked-title")}</b> <Words told={told} asked={one} />
          </p>
          <Link to={wayPath(job, "rework it", one.about, noCovering)}>{say("rework-asked-do")}</Link>
        </div>
      ))}
    </>
  );
}

/** On the job's page: everything that the office wants done over, each leading to where it is entered. */
export function ReworkWanted({ job, told }: AskedProps) {
  const { now, sayer } = told;
  const asked = reworkAsked(now.state);
  if (asked.length === 0) return null;
  const itemOf = ({ item, check }: About): string => item ?? now.state.sheet?.checks.find(({ id }) => id === check)?.items[0] ?? "";
  return (
    <Section title="rework-asked-title">
      <ul class="choices">
        {asked.map((one) => (
          <li key={one.entry}>
            <Link to={takePath(job, itemOf(one.about), one.about.tag)}>
              <span class="step-name">
                <b>{sayer.title(one.about)}</b>
                <span>
                  <Words told={told} asked={one} />
                </span>
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </Section>
  );
}
