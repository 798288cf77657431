import { factsOf, inspectionStates } from "../../../job/index.ts";
import { digest } from "../../parts/digest.ts";
import { behindOf } from "../../parts/job-now.ts";
import type { JobTold } from "../../parts/job-page.tsx";
import { unseen } from "../../parts/pictures.ts";
import { dayInWords, refusalText, useSpeaking } from "../../parts/speaking.ts";
import { storePhoto } from "../store-photo.ts";
import { DecisionForm, type Said, Typed } from "./decision-form.tsx";

/** An authority's inspections as somebody told them. The program judges none of them. */
export function Inspections({ job, told: { now, sayer, again } }: { readonly job: string; readonly told: JobTold }) {
  const { say, session } = useSpeaking();
  const behind = behindOf(now, say("someone"));
  const told = factsOf(now.state, "inspected-by-authority");
  const said = async (typed: (name: string) => string, form: FormData): Promise<Said> => {
    const file = form.get("photo");
    const words = Object.fromEntries(
      ["what", "state", "number", "day"].map((name) => [name, typed(name)]).filter(([, text]) => text !== ""),
    );
    const who = { name: typed("name") };
    if (!(file instanceof File) || file.size === 0) return { what: words, who };
    const photo = await digest(new Uint8Array(await file.arrayBuffer()));
    const troubled = await storePhoto(file, photo);
    if (troubled !== undefined) return { unread: troubled.is === "away" ? say("after-away") : refusalText(troubled.problem, session) };
    return { what: { ...words, photo }, who };
  };
  return (
    <section class="inspections">
      <h3>{say("inspected-title")}</h3>
      <p>{say("inspected-not-judged")}</p>
      {told.length === 0 && <p>{say("inspected-none")}</p>}
      <ul class="findings">
        {told.map(({ id, at, what: { what, state, number, day, photo } }) => (
          <li key={id}>
            <span>
              <b>{what}</b>: {say(`inspected-${state}`)}
              {number !== undefined && `, ${number}`}
              {day !== undefined && `, ${dayInWords(day, session.language)}`}.{" "}
              {say("inspected-says", { name: behind(id).name, time: sayer.moment(at) })}
              {photo !== undefined && unseen(now, photo) !== "picture-not-here" && (
                <a class="target" href={`/api/photos/${photo}/original`} target="_blank" rel="noreferrer">
                  {say("inspected-tag-open")}
                </a>
              )}
            </span>
          </li>
        ))}
      </ul>
      <DecisionForm
        job={job}
        entered={again}
        kind="inspected-by-authority"
        title="inspected-enter-title"
        enter="inspected-enter"
        said={said}
      >
        <Typed name="what" word="inspected-what" />
        <label class="typed">
          {say("inspected-state")}
          <select class="target" name="state" required={true}>
            {inspectionStates.map((state) => (
              <option key={state} value={state}>
                {say(`inspected-${state}`)}
              </option>
            ))}
          </select>
        </label>
        <Typed name="name" word="inspected-name" />
        <Typed name="number" word="inspected-number" optional={true} />
        <Typed name="day" word="inspected-day" day={true} optional={true} />
        <label class="typed">
          {say("inspected-tag")}
          <input class="target" type="file" name="photo" accept="image/*" />
        </label>
      </DecisionForm>
    </section>
  );
}
