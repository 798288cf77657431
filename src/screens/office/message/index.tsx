import { useState } from "preact/hooks";
import type { MailView, MessageMade, NewMessage, WireProblem } from "../../../wire/index.ts";
import { ask, tell } from "../../parts/edge.ts";
import { useNews } from "../../parts/news.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import { Field } from "../opening-parts.tsx";
import { type Addressee, saved } from "./addressee.ts";

type State =
  | { readonly is: "ready" | "making" | "away" }
  | { readonly is: "made"; readonly sent: boolean }
  | { readonly is: "refused"; readonly problem: WireProblem };

interface MessageProps {
  readonly job: string;
  readonly kind: NewMessage["kind"];
  /** Its link, where it is about one: it is known only while the page that made it is open. */
  readonly link?: string;
  readonly what?: string;
  readonly to?: Addressee;
  readonly language: "en" | "es";
}

/** A message of mail for somebody: as a file for one's own mail program; sent from here where a mail service is named. */
export function MakeMessage({ job, kind, link, what, to = {}, language }: MessageProps) {
  const { say, session } = useSpeaking();
  const service = useNews("mail", () => ask<MailView>("/api/mail"));
  const [state, setState] = useState<State>({ is: "ready" });
  const make = async (form: HTMLFormElement, send: boolean): Promise<void> => {
    const given = new FormData(form);
    const text = (name: string): string => String(given.get(name) ?? "").trim();
    setState({ is: "making" });
    const answer = await tell<MessageMade>(`/api/jobs/${job}/messages`, {
      kind,
      to: { address: text("message-address"), ...(text("message-name") !== "" && { name: text("message-name") }) },
      language: text("message-language"),
      ...(link !== undefined && { link }),
      ...(what !== undefined && { what }),
      send,
    });
    setState(answer.is === "given" ? { is: "made", sent: answer.value.sent } : answer);
    if (answer.is === "given" && !send) saved(answer.value.eml, `${kind}.eml`);
  };
  return (
    <details class="decision message">
      <summary class="target">{say(`message-about-${kind}`)}</summary>
      <form
        class="issue"
        onSubmit={(event) => {
          event.preventDefault();
          const by = (event as SubmitEvent).submitter;
          if (state.is !== "making") void make(event.currentTarget as HTMLFormElement, by?.getAttribute("value") === "send");
        }}
      >
        <p>{say("message-how")}</p>
        <Field name="message-name" word="message-name" most={120} value={to.name} />
        <Field name="message-address" word="message-address" most={200} required={true} mode="email" value={to.address} />
        <label class="typed">
          {say("message-language")}
          <select class="target" name="message-language">
            {(["en", "es"] as const).map((one) => (
              <option key={one} value={one} selected={one === language}>
                {say(`issue-language-${one}`)}
              </option>
            ))}
          </select>
        </label>
        <p class="looking-keys">
          <button type="submit" value="make" class="target main" aria-disabled={state.is === "making"}>
            {say("message-make")}
          </button>
          {service.value?.sends === true && (
            <button type="submit" value="send" class="target" aria-disabled={state.is === "making"}>
              {say("message-send")}
            </button>
          )}
        </p>
      </form>
      <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
        {state.is === "making" && <p>{say("message-making")}</p>}
        {state.is === "made" && <p>{say(state.sent ? "message-sent" : "message-made")}</p>}
        {state.is === "away" && <p>{say("after-away")}</p>}
        {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
      </div>
    </details>
  );
}
