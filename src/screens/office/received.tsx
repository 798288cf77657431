import { useState } from "preact/hooks";
import type { Item } from "../../job/index.ts";
import type { EntryMade, WireProblem } from "../../wire/index.ts";
import { digest } from "../parts/digest.ts";
import { tell } from "../parts/edge.ts";
import { JobPage, type JobTold } from "../parts/job-page.tsx";
import { Link } from "../parts/link.tsx";
import { jobPath } from "../parts/place.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import { storePhoto } from "./store-photo.ts";

type State =
  | { readonly is: "ready" | "filing" | "away" }
  | { readonly is: "filed"; readonly number: number }
  | { readonly is: "refused"; readonly problem: WireProblem };

async function file(job: string, form: FormData): Promise<State> {
  const photo = form.get("photo");
  if (!(photo instanceof File)) return { is: "ready" };
  const sha256 = await digest(new Uint8Array(await photo.arrayBuffer()));
  const troubled = await storePhoto(photo, sha256);
  if (troubled) return troubled;
  const [item = "", tag] = String(form.get("item")).split(" ");
  const said = Object.fromEntries(["from", "how", "when"].map((name) => [name, String(form.get(name)).trim()]));
  const answer = await tell<EntryMade>(`/api/jobs/${job}/received`, {
    item,
    ...(tag === undefined ? {} : { tag }),
    photo: sha256,
    ...said,
  });
  return answer.is === "given" ? { is: "filed", number: answer.value.number } : answer;
}

/** Files a picture that came by text message, from the customer, or from a crew without the program. */
export const Received = ({ job }: { readonly job: string }) => <JobPage job={job}>{(told) => <Filing job={job} told={told} />}</JobPage>;

function Filing({ job, told }: { readonly job: string; readonly told: JobTold }) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (state.is === "filing") return;
    const form = event.currentTarget as HTMLFormElement;
    setState({ is: "filing" });
    void file(job, new FormData(form)).then((came) => {
      setState(came);
      if (came.is === "filed") form.reset();
    });
  };
  return (
    <section class="received">
      <h2>{say("received-title")}</h2>
      <p>{say("received-how-it-counts")}</p>
      <form class="issue" onSubmit={submit}>
        <label>
          {say("received-file")}
          <input class="target" type="file" name="photo" accept="image/*" required={true} />
        </label>
        <label>
          {say("received-item")}
          <select class="target" name="item" required={true}>
            {choices(told).map(({ value, title }) => (
              <option key={value} value={value}>
                {title}
              </option>
            ))}
          </select>
        </label>
        {(["from", "how", "when"] as const).map((name) => (
          <label key={name}>
            {say(`received-${name}`)}
            <input class="target" type="text" name={name} required={true} maxLength={80} autocomplete="off" />
          </label>
        ))}
        <button type="submit" class="target main" aria-disabled={state.is === "filing"}>
          {say("received-file-it")}
        </button>
        <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
          {state.is === "filing" && <p>{say("received-filing")}</p>}
          {state.is === "filed" && <p>{say("received-done", { number: state.number })}</p>}
          {state.is === "away" && <p>{say("received-away")}</p>}
          {state.is === "refused" && (
            <p>
              {say("received-refused")} {refusalText(state.problem, session)}
            </p>
          )}
        </div>
      </form>
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}

/** Every picture that the job may ask for, once for each tag where it repeats. */
function choices({ now, sayer }: JobTold): readonly { readonly value: string; readonly title: string }[] {
  const pictures = now.state.sheet?.items.filter(({ kind }) => kind === "picture") ?? [];
  const tagsOf = ({ tags }: Item): readonly (string | undefined)[] =>
    tags === undefined ? [undefined] : now.state.tags.filter(({ set }) => set === tags).map(({ tag }) => tag);
  return pictures.flatMap((item) =>
    tagsOf(item).map((tag) => ({
      value: tag === undefined ? item.id : `${item.id} ${tag}`,
      title: sayer.title({ item: item.id, ...(tag === undefined ? {} : { tag }) }),
    })),
  );
}
