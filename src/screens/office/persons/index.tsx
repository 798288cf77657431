import { useState } from "preact/hooks";
import type { People, PersonAsked, PersonAsking, PersonRequest, PersonRequests } from "../../../wire/index.ts";
import { ask, tell } from "../../parts/edge.ts";
import { Frame } from "../../parts/frame.tsx";
import { Link } from "../../parts/link.tsx";
import { useNews } from "../../parts/news.ts";
import { officePath } from "../../parts/place.ts";
import { dayInWords, momentHere, useSpeaking } from "../../parts/speaking.ts";
import { type Doing, Told } from "./told.tsx";

const lines = (typed: FormDataEntryValue | null): string[] =>
  String(typed ?? "")
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");

function asked(form: FormData, id: string): PersonAsking {
  const [contacts, person] = [lines(form.get("contacts")), String(form.get("person") ?? "")];
  return {
    id,
    asks: form.get("asks") === "removal" ? "removal" : "data",
    names: lines(form.get("names")),
    ...(contacts.length > 0 && { contacts }),
    ...(person !== "" && { person }),
    day: String(form.get("day") ?? ""),
  };
}

function Lines({
  name,
  word,
  required,
}: {
  readonly name: string;
  readonly word: "persons-names" | "persons-contacts";
  readonly required: boolean;
}) {
  const { say } = useSpeaking();
  return (
    <label class="typed wide">
      {say(word)}
      <textarea name={name} rows={2} maxLength={700} required={required} />
    </label>
  );
}

/** A request as somebody made it. The id is made with the form, so that sent twice it is one request. */
function EnterRequest({ again }: { readonly again: () => void }) {
  const { say } = useSpeaking();
  const people = useNews("people", () => ask<People>("/api/people")).value?.people ?? [];
  const [id, setId] = useState(() => crypto.randomUUID());
  const [state, setState] = useState<Doing>({ is: "ready" });
  const enter = async (form: HTMLFormElement): Promise<void> => {
    setState({ is: "doing" });
    const answer = await tell<PersonAsked>("/api/persons", asked(new FormData(form), id));
    setState(answer.is === "given" ? { is: "done" } : answer);
    if (answer.is !== "given") return;
    form.reset();
    setId(crypto.randomUUID());
    again();
  };
  return (
    <form
      class="issue opening"
      onSubmit={(event) => {
        event.preventDefault();
        if (state.is !== "doing") void enter(event.currentTarget as HTMLFormElement);
      }}
    >
      <fieldset>
        <legend>{say("persons-enter")}</legend>
        <label class="typed">
          {say("persons-asks")}
          <select class="target" name="asks">
            <option value="data">{say("persons-asks-data")}</option>
            <option value="removal">{say("persons-asks-removal")}</option>
          </select>
        </label>
        <Lines name="names" word="persons-names" required={true} />
        <Lines name="contacts" word="persons-contacts" required={false} />
        <label class="typed">
          {say("persons-who")}
          <select class="target" name="person">
            <option value="">{say("persons-nobody")}</option>
            {people.map(({ person, name }) => (
              <option key={person} value={person}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label class="typed">
          {say("persons-day")}
          <input type="date" name="day" required={true} />
        </label>
      </fieldset>
      <button type="submit" class="target main" aria-disabled={state.is === "doing"}>
        {say("persons-enter-now")}
      </button>
      <Told state={state} done="persons-entered" />
    </form>
  );
}

/** How a request stands, in words. */
export function standing(
  say: ReturnType<typeof useSpeaking>["say"],
  language: "en" | "es",
  { state, held, answered }: PersonRequest,
): string {
  if (answered !== undefined) return say("persons-state-answered", { time: momentHere(answered.at, language) });
  return state === "held" && held !== undefined
    ? say("persons-state-held", { until: dayInWords(held.until, language) })
    : say("persons-state-open");
}

/** Who asked what the company holds about him, or that it be removed. */
export function PersonsPage() {
  const { say, session } = useSpeaking();
  const news = useNews("persons", () => ask<PersonRequests>("/api/persons"));
  const requests = news.value?.requests ?? [];
  return (
    <Frame title={say("persons-title")} news={news} inside={true}>
      <p>{say("persons-how")}</p>
      {news.value !== undefined && requests.length === 0 && <p>{say("persons-none")}</p>}
      <ul class="shown">
        {requests.map((one) => (
          <li key={one.request}>
            <Link to={officePath("persons", one.request)}>{one.names[0] ?? say("persons-nameless")}</Link>
            <p>
              {say(one.asks === "data" ? "persons-line-data" : "persons-line-removal", { day: dayInWords(one.day, session.language) })}.{" "}
              {standing(say, session.language, one)}
            </p>
          </li>
        ))}
      </ul>
      <EnterRequest again={news.again} />
    </Frame>
  );
}
