import type { Live } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { screenAddress, unseen } from "../../parts/pictures.ts";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import type { Taking } from "../job-part.ts";
import { useKeep } from "../keep/index.ts";
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
  const { state } = useKeep();
  const atOffice = unseen(now, sha256);
  // this phone's own small picture first; what another phone took comes from the office
  const elsewhere = here.address === undefined && here.judged !== undefined && atOffice === undefined;
  const seen = elsewhere ? { ...here, address: screenAddress(now, sha256) } : here;
  // what this phone took itself it has, whether it can draw it or not
  const own = state.photos.some((photo) => photo.sha256 === sha256);
  return (
    <li>
      <SmallPhoto seen={seen} title={title} {...(own || atOffice === undefined ? {} : { instead: atOffice })} />
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
