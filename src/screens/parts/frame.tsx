import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { Link } from "./link.tsx";
import type { News } from "./news.ts";
import { clockText, refusalText, useSpeaking } from "./speaking.ts";

export interface Cell {
  readonly label: string;
  readonly text: string;
}

/** When the page was last read, and that the office does not answer, where it does not. */
export function NewsLine({ news }: { readonly news: News<unknown> }) {
  const { say, session } = useSpeaking();
  const { readAt, awaySince } = news;
  const read = readAt === undefined ? "" : clockText(readAt, session.language);
  const away =
    awaySince === undefined
      ? ""
      : readAt === undefined
        ? say("away-first")
        : say("away-since", { time: clockText(awaySince, session.language), read });
  return (
    <div class="news">
      <p role="status" class={away === "" ? "quiet" : "away"}>
        {away}
      </p>
      {away === "" && <p>{readAt === undefined ? say("reading-first") : say("last-read", { time: read })}</p>}
    </div>
  );
}

interface FrameProps {
  readonly title: string;
  readonly cells?: readonly Cell[];
  readonly news: News<unknown>;
  /** Shows the way back to all jobs. */
  readonly inside?: boolean;
  readonly children?: ComponentChildren;
}

/** A page as a drawing: the border, its name, what it is about, and the block of small compartments at the foot. */
export function Frame({ title, cells = [], news, inside = false, children }: FrameProps) {
  const { say, session, moved, signOut } = useSpeaking();
  const all = [{ label: say("company"), text: session.companyName }, ...cells, { label: say("signed-in"), text: session.name }];
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
    <div class={`drawing role-${session.role.replace(" ", "-")}`}>
      <header
        class={session.line === undefined ? "page-head" : "page-head own-line"}
        {...(session.line !== undefined && { style: { borderTopColor: session.line } })}
      >
        {session.mark !== undefined && <img class="own-mark" src={`/api/company/mark/${session.mark}`} alt="" />}
        <h1 tabIndex={-1} ref={heading}>
          {title}
        </h1>
        <div class="under-name">
          <NewsLine news={news} />
          {inside && (
            <nav aria-label={say("jobs")}>
              <Link to="/">{say("to-all-jobs")}</Link>
            </nav>
          )}
        </div>
      </header>
      <main>
        {news.problem === undefined ? (
          children
        ) : (
          <section class="refused">
            <h2>{say("not-given")}</h2>
            <p>{refusalText(news.problem, session)}</p>
          </section>
        )}
      </main>
      <footer>
        <dl>
          {all.map(({ label, text }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
        <button type="button" class="target" onClick={signOut}>
          {say("sign-out")}
        </button>
      </footer>
    </div>
  );
}
