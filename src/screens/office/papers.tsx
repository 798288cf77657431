import { useId, useState } from "preact/hooks";
import { factsOf } from "../../job/index.ts";
import type { PaperStored } from "../../wire/index.ts";
import { digest } from "../parts/digest.ts";
import { sendFile } from "../parts/edge.ts";
import { JobPage, type JobTold } from "../parts/job-page.tsx";
import { Link } from "../parts/link.tsx";
import { jobPath } from "../parts/place.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import { DecisionForm, type Said, Typed } from "./deciding/decision-form.tsx";

/** The papers of a job as PDF: permit, inspection, the electrician's, manuals, change orders. */
export const Papers = ({ job }: { readonly job: string }) => <JobPage job={job}>{(told) => <OfJob job={job} {...told} />}</JobPage>;

const kinds = ["permit", "inspection", "electrician", "manual", "change", "other"] as const;

/** Papers of the job that are files, with where each can be had. */
const filesIn = ({ now: { state } }: JobTold): readonly { readonly pdf: string; readonly title: string }[] => [
  ...factsOf(state, "paper-added").flatMap(({ what: { title, paper, pdf } }) =>
    pdf === undefined ? [] : [{ pdf, title: `${title} (${paper})` }],
  ),
  ...factsOf(state, "done-by-others").flatMap(({ what: { what, paper } }) => (paper === undefined ? [] : [{ pdf: paper, title: what }])),
];

function OfJob({ job, ...told }: JobTold & { readonly job: string }) {
  const { say, session } = useSpeaking();
  const list = useId();
  const [pages, setPages] = useState<number>();
  const files = filesIn(told);
  const said = async (typed: (name: string) => string, form: FormData): Promise<Said> => {
    const file = form.get("file");
    setPages(undefined);
    if (!(file instanceof File) || file.size === 0) return { unread: say("papers-none-chosen") };
    const pdf = await digest(new Uint8Array(await file.arrayBuffer()));
    const answer = await sendFile<PaperStored>("PUT", `/api/papers/${pdf}`, file);
    if (answer.is === "away") return { unread: say("after-away") };
    if (answer.is === "refused") return { unread: refusalText(answer.problem, session) };
    setPages(answer.value.pages);
    return { what: { title: typed("title"), paper: typed("kind"), pdf } };
  };
  return (
    <section class="after-work">
      <h2>{say("papers-title")}</h2>
      <p>{say("papers-how")}</p>
      <DecisionForm job={job} kind="paper-added" title="papers-add" enter="papers-enter" entered={told.again} said={said}>
        <label class="typed">
          {say("papers-file")}
          <input class="target" type="file" name="file" accept="application/pdf" required={true} />
        </label>
        <Typed name="title" word="papers-name" />
        <label class="typed">
          {say("papers-kind")}
          <input type="text" name="kind" list={list} required={true} maxLength={200} autoComplete="off" />
        </label>
        <datalist id={list}>
          {kinds.map((kind) => (
            <option key={kind} value={say(`papers-kind-${kind}`)} />
          ))}
        </datalist>
      </DecisionForm>
      {pages !== undefined && <p role="status">{say("papers-pages", { pages })}</p>}
      {files.length === 0 && <p>{say("papers-none")}</p>}
      <ul class="findings">
        {files.map(({ pdf, title }) => (
          <li key={pdf}>
            <a class="target" href={`/api/papers/${pdf}`}>
              {title}
            </a>
          </li>
        ))}
      </ul>
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}
