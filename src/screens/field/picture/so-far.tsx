import type { Live } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { screenAddress } from "../../parts/pictures.ts";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import type { Taking } from "../job-part.ts";
import { movePath } from "../paths.ts";
import { SmallPhoto, useSeen } from "./seen.tsx";
import type { Pictured } from "./what.ts";

/** The pictures that count for one item, the oldest first. */
export const picturesSoFar = ({ now }: Taking["told"], { item, tag }: Pictured): readonly Live[] =>
  now.state.facts.filter(
    ({ kind, standing, what }) => kind === "picture-taken" && standing === "counts" && what.item === item && what.tag === tag,
  );

interface TakenProps extends Pick<Taking, "job" | "told"> {
  readonly fact: Live;
  readonly title: string;
}

/** One picture that was taken before: from this phone, else as the office has it. */
function Taken({ fact, job, told: { now, sayer }, title }: TakenProps) {
  const { say } = useSpeaking();
  const sha256 = String(fact.what.photo);
  const here = useSeen({ sha256, type: String(fact.what.type) }, false);
  const atOffice = now.view.photos[sha256]?.state === "read";
  // this phone's own small picture first; what another phone took comes from the office
  const elsewhere = here.address === undefined && here.judged !== undefined && atOffice;
  const seen = elsewhere ? { address: screenAddress(now, sha256) } : here;
  return (
    <li>
      <SmallPhoto seen={seen} title={title} />
      <p>
        {sayer.moment(fact.at)}
        {typeof fact.what.caption === "string" && `: ${fact.what.caption}`}
      </p>
      {fact.what.judged === "unreadable" && <p>{say("picture-judged-unreadable")}</p>}
      <Link to={movePath(job, fact.id)}>{say("reading-move")}</Link>
    </li>
  );
}

export function SoFar({
  job,
  told,
  pictured,
  title,
}: Pick<Taking, "job" | "told"> & { readonly pictured: Pictured; readonly title: string }) {
  const before = picturesSoFar(told, pictured);
  if (before.length === 0) return null;
  return (
    <Section title="picture-so-far">
      <ul class="pictures-so-far">
        {before.map((fact) => (
          <Taken key={fact.id} fact={fact} job={job} told={told} title={title} />
        ))}
      </ul>
    </Section>
  );
}
