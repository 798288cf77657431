import { disagreeingOn } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { takePath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";

interface DifferingProps {
  readonly job: string;
  readonly told: ToldOnPhone;
  readonly covering: string;
}

/** Readings of this covering that a photo with a card does not agree with. They hold nothing, and are seen before it is covered. */
export function Differing({ job, told: { now, sayer }, covering }: DifferingProps) {
  const { say } = useSpeaking();
  const differing = disagreeingOn(now.state, now.findings, covering);
  if (differing.length === 0) return null;
  return (
    <ul class="choices">
      {differing.map(({ item, tag, entry }) => (
        <li key={entry}>
          <Link to={takePath(job, item, tag)} class="target">
            {say("cover-differs", { title: sayer.title(tag === undefined ? { item } : { item, tag }) })}
          </Link>
        </li>
      ))}
    </ul>
  );
}
