import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { Link } from "../parts/link.tsx";
import { clockText, useSpeaking } from "../parts/speaking.ts";
import { counted } from "../parts/words/index.ts";
import { useKeep } from "./keep/index.ts";
import { personPath, unsentPath } from "./paths.ts";
import { AskWho } from "./who.tsx";

/** What the office has not seen, and since when it does not answer. Leads to the page that says it whole. */
function Standing() {
  const { say, session } = useSpeaking();
  const { state } = useKeep();
  const { entries, photos, sending, awaySince, signedOut, readAt, full } = state;
  const waiting = [...entries, ...photos].filter(({ standing }) => standing === "not sent").length;
  const troubled = [...entries, ...photos].filter(({ standing }) => standing === "refused" || standing === "lost").length;
  const parts = [
    ...(full ? [say("phone-full")] : []),
    ...(signedOut ? [say("phone-signed-out")] : []),
    ...(waiting > 0 ? [counted(say, "phone-not-sent", waiting)] : []),
    ...(troubled > 0 ? [counted(say, "phone-troubled", troubled)] : []),
    ...(sending?.photo === undefined ? [] : [say("phone-sending", { share: Math.round((sending.share ?? 0) * 100) })]),
    ...(awaySince === undefined ? [] : [say("phone-away", { time: clockText(awaySince, session.language) })]),
  ];
  const quiet = readAt === undefined ? say("reading-first") : say("phone-all-sent", { time: clockText(readAt, session.language) });
  return (
    <Link to={unsentPath} class={`target standing ${parts.length > 0 ? "waits" : ""}`}>
      <span role="status">{parts.length > 0 ? parts.join(" ") : quiet}</span>
    </Link>
  );
}

interface PhoneFrameProps {
  readonly title: string;
  /** One way up: where it leads and what stands there. */
  readonly back?: { readonly to: string; readonly title: string };
  readonly children?: ComponentChildren;
}

/** A page of the crew's phone: its name and the way back on top, what is not sent and who enters in the block at the foot. */
export function PhoneFrame({ title, back, children }: PhoneFrameProps) {
  const { say, session, moved } = useSpeaking();
  const { state } = useKeep();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} · Asburied`;
  }, [title]);
  useEffect(() => {
    if (!moved) return;
    scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, [moved]);
  return (
    <div class="drawing role-crew">
      <header class="page-head phone-head">
        {back !== undefined && (
          <nav aria-label={say("jobs")}>
            <Link to={back.to} class="target back">
              <span>{back.title}</span>
            </Link>
          </nav>
        )}
        <h1 tabIndex={-1} ref={heading}>
          {title}
        </h1>
      </header>
      <main>{children}</main>
      <footer class="phone-foot">
        <Standing />
        <Link to={personPath} class="target who">
          <span>{say("phone-person")}</span>
          <b>{state.today?.name ?? session.name}</b>
        </Link>
      </footer>
      {state.askingWho && <AskWho />}
    </div>
  );
}

/** A page of something that this phone does not hold. */
export function NotHere() {
  const { say } = useSpeaking();
  return (
    <PhoneFrame title={say("phone-not-here")} back={{ to: "/", title: say("open-in-the-ground") }}>
      <p>{say("phone-not-here-how")}</p>
    </PhoneFrame>
  );
}
