import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { movePath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";

interface PutByCardProps {
  readonly job: string;
  readonly told: ToldOnPhone;
  readonly entries: readonly string[];
}

/** The pictures that came to their place by a card, each with the way to move it. */
export function PutByCard({ job, told: { now, sayer }, entries }: PutByCardProps) {
  const { say } = useSpeaking();
  const put = entries.flatMap((id) => now.state.facts.find((fact) => fact.id === id && fact.standing === "counts") ?? []);
  if (put.length === 0) return null;
  return (
    <details class="put-by-card">
      <summary class="target">{say("card-put", { count: put.length })}</summary>
      <ul>
        {put.map(({ id, what: { item, tag } }) => (
          <li key={id}>
            {sayer.title({ item: String(item), ...(typeof tag === "string" ? { tag } : {}) })}{" "}
            <Link to={movePath(job, id)}>{say("reading-move")}</Link>
          </li>
        ))}
      </ul>
    </details>
  );
}
