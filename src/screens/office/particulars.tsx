import { useState } from "preact/hooks";
import { jobWho } from "../../job/index.ts";
import type { Particulars as Change, EntryMade, WireProblem } from "../../wire/index.ts";
import { tell } from "../parts/edge.ts";
import { JobPage, type JobTold } from "../parts/job-page.tsx";
import { Link } from "../parts/link.tsx";
import { jobPath } from "../parts/place.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import { Contacts, CrewChoice, Field } from "./opening-parts.tsx";
import { contactsTyped, type Filled, filledIn } from "./opening-typed.ts";

type State =
  | { readonly is: "ready" | "entering" | "away" | "none" }
  | { readonly is: "entered"; readonly number: number }
  | { readonly is: "refused"; readonly problem: WireProblem };

/** What a job is called, its numbers, crew and contacts, changed by the office: the invoice often has its number last. */
export const Particulars = ({ job }: { readonly job: string }) => (
  <JobPage job={job}>{(told) => <Changing job={job} told={told} />}</JobPage>
);

type Known = Readonly<Record<string, { name?: string; phone?: string; contact?: string }>>;
const texts = ["title", "order", "invoice", "address", "reason"] as const;
const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

function changeTyped(filled: Filled, before: Change): Change {
  const typed = Object.fromEntries(texts.flatMap((name) => (filled.text(name) === "" ? [] : [[name, filled.text(name)]])));
  const all: Change = { ...typed, ...contactsTyped(filled), crew: [...filled.all("crew")] };
  return Object.fromEntries(
    Object.entries(all).filter(([name, value]) => !same(value, before[name as keyof Change] ?? (name === "crew" ? [] : undefined))),
  );
}

function Changing({ job, told: { now } }: { readonly job: string; readonly told: JobTold }) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const { opened } = now.state;
  const who = jobWho(now.state) as unknown as Known & { readonly address?: string };
  // as it was when the page was drawn: what somebody else changed since is not written back
  const [before, setBefore] = useState(
    () => ({ ...who, title: opened?.title, order: opened?.order, invoice: opened?.invoice, crew: opened?.crew ?? [] }) as Change,
  );
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (state.is === "entering") return;
    const change = changeTyped(filledIn(event.currentTarget as HTMLFormElement), before);
    if (Object.keys(change).every((name) => name === "reason")) {
      setState({ is: "none" });
      return;
    }
    setState({ is: "entering" });
    void tell<EntryMade>(`/api/jobs/${job}/particulars`, change).then((answer) => {
      setState(answer.is === "given" ? { is: "entered", number: answer.value.number } : answer);
      if (answer.is === "given") setBefore({ ...before, ...change });
    });
  };
  return (
    <form class="issue opening" onSubmit={submit}>
      <h2>{say("particulars-title")}</h2>
      <p>{say("particulars-how")}</p>
      <fieldset>
        <legend>{say("opening-job")}</legend>
        <Field name="title" word="opening-name" most={200} required={true} value={opened?.title} />
        <Field name="order" word="opening-order" most={80} value={opened?.order} />
        <Field name="invoice" word="opening-invoice" most={80} value={opened?.invoice} />
        <Field name="address" word="opening-address" most={300} value={who.address} />
      </fieldset>
      <Contacts known={who} />
      <CrewChoice people={now.people} chosen={opened?.crew ?? []} />
      <Field name="reason" word="particulars-reason" most={400} />
      <button type="submit" class="target main" aria-disabled={state.is === "entering"}>
        {say("particulars-enter")}
      </button>
      <div id="opening-answer" role="status" class={["refused", "away"].includes(state.is) ? "answer refused" : "answer"}>
        {state.is === "entering" && <p>{say("particulars-entering")}</p>}
        {state.is === "entered" && <p>{say("particulars-done", { number: state.number })}</p>}
        {state.is === "none" && <p>{say("particulars-none")}</p>}
        {state.is === "away" && <p>{say("particulars-away")}</p>}
        {state.is === "refused" && (
          <p>
            {say("particulars-refused")} {refusalText(state.problem, session)}
          </p>
        )}
      </div>
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </form>
  );
}
