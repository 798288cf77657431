import { useState } from "preact/hooks";
import type { PersonHeld, PersonRequest } from "../../../wire/index.ts";
import { tell } from "../../parts/edge.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import type { About } from "./everywhere.tsx";
import { type Doing, Told } from "./told.tsx";

/** The file to hand over, and that it has been. */
export function Data({ found: { request, asks }, again }: About) {
  const { say } = useSpeaking();
  const [state, setState] = useState<Doing>({ is: "ready" });
  const given = async (): Promise<void> => {
    setState({ is: "doing" });
    const answer = await tell<PersonRequest>(`/api/persons/${request}/answer`, {});
    setState(answer.is === "given" ? { is: "done" } : answer);
    again();
  };
  return (
    <section class="issue">
      <p>{say("persons-data-how")}</p>
      <p class="looking-keys">
        <a class="target" href={`/api/persons/${request}/data`} download={`data-${request}.json`}>
          {say("persons-data")}
        </a>
        {asks === "data" && (
          <button type="button" class="target main" aria-disabled={state.is === "doing"} onClick={() => void given()}>
            {say("persons-data-given")}
          </button>
        )}
      </p>
      <Told state={state} done="persons-entered" />
    </section>
  );
}

/** Until when a removal waits, and why. */
export function Hold({ found: { request, jobs, held }, again }: About) {
  const { say } = useSpeaking();
  const [state, setState] = useState<Doing>({ is: "ready" });
  const covered = jobs
    .map(({ coveredUntil }) => coveredUntil ?? "")
    .sort()
    .at(-1);
  const hold = async (form: FormData): Promise<void> => {
    const note = String(form.get("note") ?? "").trim();
    const because = form.get("because") === "dispute" ? "dispute" : "warranty";
    const said: PersonHeld = { because, until: String(form.get("until")), ...(note !== "" && { note }) };
    setState({ is: "doing" });
    const answer = await tell<PersonRequest>(`/api/persons/${request}/hold`, said);
    setState(answer.is === "given" ? { is: "done" } : answer);
    again();
  };
  return (
    <form
      class="issue opening"
      onSubmit={(event) => {
        event.preventDefault();
        if (state.is !== "doing") void hold(new FormData(event.currentTarget as HTMLFormElement));
      }}
    >
      <fieldset>
        <legend>{say("persons-hold")}</legend>
        <p>{say("persons-hold-how")}</p>
        <label class="typed">
          {say("persons-hold-because")}
          <select class="target" name="because">
            {(["warranty", "dispute"] as const).map((because) => (
              <option key={because} value={because}>
                {say(`persons-because-${because}`)}
              </option>
            ))}
          </select>
        </label>
        <label class="typed">
          {say("persons-hold-until")}
          <input type="date" name="until" required={true} defaultValue={held?.until ?? covered ?? ""} />
        </label>
        <label class="typed wide">
          {say("persons-hold-note")}
          <input type="text" name="note" maxLength={2000} autoComplete="off" />
        </label>
      </fieldset>
      <button type="submit" class="target" aria-disabled={state.is === "doing"}>
        {say("persons-hold-now")}
      </button>
      <Told state={state} done="persons-entered" />
    </form>
  );
}
