import { useState } from "preact/hooks";
import type { QuestionList } from "../../wire/index.ts";
import { ask } from "../parts/edge.ts";
import { Link } from "../parts/link.tsx";
import { useNews } from "../parts/news.ts";
import { ownerPath } from "../parts/place.ts";
import { useSpeaking } from "../parts/speaking.ts";

/** The questions, each with the decision that it serves, and the report to print. */
export function Questions() {
  const { say } = useSpeaking();
  const { value } = useNews("questions", () => ask<QuestionList>("/api/questions"));
  const [month, setMonth] = useState(() => new Date().toISOString().slice(0, 7));
  return (
    <section class="questions">
      <h2>{say("owner-questions")}</h2>
      <ul class="jobs">
        {(value?.questions ?? []).map(({ id, title, decides }) => (
          <li key={id}>
            <Link to={ownerPath(id)} class="job-link">
              <h3>{title}</h3>
              <p>{decides}</p>
            </Link>
          </li>
        ))}
      </ul>
      <h2>{say("owner-report")}</h2>
      <label class="typed">
        {say("owner-month")}
        <input type="text" inputMode="numeric" value={month} onInput={(event) => setMonth(event.currentTarget.value)} />
      </label>
      <p>
        <a class="target" href={`/api/report?month=${encodeURIComponent(month.trim())}`} target="_blank" rel="noreferrer">
          {say("owner-report-open")}
        </a>
      </p>
    </section>
  );
}
