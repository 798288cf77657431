import { useState } from "preact/hooks";
import type { Access, JoinCodeMade, People, WireProblem } from "../../../wire/index.ts";
import { WaysIn } from "../../access/ways-in.tsx";
import { type Answer, ask, tell } from "../../parts/edge.ts";
import { useNews } from "../../parts/news.ts";
import { momentHere, refusalText, useSpeaking } from "../../parts/speaking.ts";
import { SquarePicture } from "./square-picture.tsx";

type Person = People["people"][number];
type State =
  | { readonly is: "ready" | "doing" | "away" }
  | { readonly is: "asked"; readonly what: "recovery" | "gone" }
  | { readonly is: "code"; readonly made: JoinCodeMade }
  | { readonly is: "link"; readonly link: string }
  | { readonly is: "refused"; readonly problem: WireProblem };

export const roleWords = { crew: "people-role-crew", office: "people-role-office", "company owner": "people-role-owner" } as const;

/** Twelve digits as they are read out: by fours. */
const byFours = (digits: string): string => digits.replaceAll(/(\d{4})(?=\d)/g, "$1 ");
const whole = (path: string): string => new URL(path, location.href).href;

function Given({ state }: { readonly state: State }) {
  const { say, session } = useSpeaking();
  if (state.is === "code")
    return (
      <div class="access-given">
        <p>
          <output class="access-digits">{byFours(state.made.digits)}</output>
        </p>
        <SquarePicture text={whole(state.made.picture)} title={say("people-code-picture")} />
        <p>{say("people-code-made", { time: momentHere(state.made.ends, session.language) })}</p>
      </div>
    );
  if (state.is === "link")
    return (
      <div class="access-given">
        <p>
          <output class="others-link">{whole(state.link)}</output>
        </p>
        <p>{say("people-link-made")}</p>
      </div>
    );
  return (
    <div role="status" class={state.is === "refused" || state.is === "away" ? "answer refused" : "answer"}>
      {state.is === "doing" && <p>{say("people-doing")}</p>}
      {state.is === "away" && <p>{say("access-away")}</p>}
      {state.is === "refused" && <p>{refusalText(state.problem, session)}</p>}
    </div>
  );
}

function Devices({ person, name }: { readonly person: string; readonly name: string }) {
  const { say } = useSpeaking();
  const news = useNews(`access ${person}`, () => ask<Access>(`/api/people/${person}/access`));
  return news.value === undefined ? (
    <p role="status">{say("people-doing")}</p>
  ) : (
    <section aria-label={say("access-of", { name })}>
      <WaysIn access={news.value} heading="h4" again={news.again} />
    </section>
  );
}

const before = { recovery: "people-recovery-how", gone: "people-gone-how" } as const;
const sure = { recovery: "people-recovery-sure", gone: "people-gone-sure" } as const;

/** One person: a code or a link, a new way in, the devices, and the end of all of it. */
export function PersonWays({ person: { person, name, role }, again }: { readonly person: Person; readonly again: () => void }) {
  const { say, session } = useSpeaking();
  const [state, setState] = useState<State>({ is: "ready" });
  const [open, setOpen] = useState(false);
  const mine = person === session.person;
  const isOwner = session.role === "company owner";
  const did = async <T,>(answer: Promise<Answer<T>>, then: (value: T) => State): Promise<void> => {
    setState({ is: "doing" });
    const came = await answer;
    setState(came.is === "given" ? then(came.value) : came);
    again();
  };
  const path = `/api/people/${person}`;
  const link = ({ link: made }: { link: string }): State => ({ is: "link", link: made });
  const code = (): Promise<void> => did(tell<JoinCodeMade>(`${path}/codes`, {}), (made) => ({ is: "code", made }));
  const giveLink = (): Promise<void> => did(tell<{ link: string }>(`${path}/links`), link);
  const confirmed = (what: "recovery" | "gone"): Promise<void> =>
    what === "recovery"
      ? did(tell<{ link: string }>(`${path}/recovery`), link)
      : did(tell<undefined>(path, undefined, "DELETE"), () => ({ is: "ready" }));
  return (
    <article class="access-person">
      <h3>{name}</h3>
      <p class="looking-keys">
        {role === "crew" && (
          <button type="button" class="target" onClick={() => void code()}>
            {say("people-code")}
          </button>
        )}
        {role !== "crew" && isOwner && !mine && (
          <>
            <button type="button" class="target" onClick={() => void giveLink()}>
              {say("people-link")}
            </button>
            <button type="button" class="target" onClick={() => setState({ is: "asked", what: "recovery" })}>
              {say("people-recovery")}
            </button>
          </>
        )}
        {isOwner && !mine && (
          <button type="button" class="target" onClick={() => setState({ is: "asked", what: "gone" })}>
            {say("people-gone")}
          </button>
        )}
      </p>
      {state.is === "asked" && (
        <>
          <p>{say(before[state.what], { name })}</p>
          <p class="looking-keys">
            <button type="button" class="target main" onClick={() => void confirmed(state.what)}>
              {say(sure[state.what], state.what === "gone" ? { name } : {})}
            </button>
            <button type="button" class="target" onClick={() => setState({ is: "ready" })}>
              {say("access-keep")}
            </button>
          </p>
        </>
      )}
      <Given state={state} />
      {(isOwner || role === "crew" || mine) && (
        <details onToggle={(event) => setOpen(event.currentTarget.open)}>
          <summary class="target">{say("people-devices")}</summary>
          {open && <Devices person={person} name={name} />}
        </details>
      )}
    </article>
  );
}
