import type { About } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import type { ToldOnPhone } from "../told.ts";
import { aboutPath } from "./rod-places.ts";

interface MissingLinksProps {
  readonly job: string;
  readonly missing: readonly About[];
  readonly told: ToldOnPhone;
}

/** What is missing, each with the way to it. */
export function MissingLinks({ job, missing, told: { now, sayer } }: MissingLinksProps) {
  const ways = missing.flatMap((about) => {
    const to = aboutPath(job, now.state.sheet, about);
    return to === undefined ? [] : [{ to, title: sayer.title(about) }];
  });
  if (ways.length === 0) return null;
  return (
    <ul class="choices">
      {ways.map(({ to, title }) => (
        <li key={`${to} ${title}`}>
          <Link to={to}>{title}</Link>
        </li>
      ))}
    </ul>
  );
}
