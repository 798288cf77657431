import { makeCallbackSayer, makeSayer } from "../../../record/index.ts";
import type { CallbackList } from "../../../wire/index.ts";
import { ask } from "../../parts/edge.ts";
import { Frame } from "../../parts/frame.tsx";
import { Link } from "../../parts/link.tsx";
import { useNews } from "../../parts/news.ts";
import { jobPath } from "../../parts/place.ts";
import { momentHere, useSpeaking } from "../../parts/speaking.ts";

/** Every callback of the company: those that are open first, the longest open on top. */
export function CallbackListPage() {
  const { say, session } = useSpeaking();
  const news = useNews("callbacks", () => ask<CallbackList>("/api/callbacks"));
  const callbacks = news.value?.callbacks ?? [];
  const sayer = makeCallbackSayer(makeSayer({ language: session.language, units: session.units, zone: "UTC" }), session.language);
  return (
    <Frame title={say("callbacks-all")} news={news} inside={true}>
      <section class="after-work">
        <p>{say(news.value !== undefined && callbacks.length === 0 ? "callbacks-none" : "callbacks-order")}</p>
        <ul class="shown">
          {callbacks.map(({ job, title, ownNumber, entry, symptom, at, closed }) => (
            <li key={entry}>
              <Link to={jobPath(job, "callbacks")}>{title}</Link> <span class="own-number">{ownNumber}</span>
              <p>
                {sayer.symptom(symptom)}. {say("callbacks-opened-at", { time: momentHere(at, session.language) })}{" "}
                {say(closed ? "callbacks-closed" : "callbacks-open")}
              </p>
            </li>
          ))}
        </ul>
      </section>
    </Frame>
  );
}
