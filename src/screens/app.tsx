import { useCallback, useEffect, useMemo, useState } from "preact/hooks";
import type { SessionView } from "../wire/index.ts";
import { FieldJob, OpenGround } from "./field/index.tsx";
import { OfficeJob, OfficeJobs } from "./office/index.tsx";
import { OwnerJob, OwnerJobs } from "./owner/index.tsx";
import { ask, tell } from "./parts/edge.ts";
import { Frame } from "./parts/frame.tsx";
import { useNews } from "./parts/news.ts";
import { placeOf } from "./parts/place.ts";
import { type Speaking, SpeakingContext, useSpeaking } from "./parts/speaking.ts";
import { screenWords } from "./parts/words/index.ts";

const pages = {
  crew: { jobs: OpenGround, job: FieldJob },
  office: { jobs: OfficeJobs, job: OfficeJob },
  "company owner": { jobs: OwnerJobs, job: OwnerJob },
} as const;

/** The path that is shown, and the way to another. */
function usePath(): { readonly path: string; readonly moved: boolean; readonly go: (path: string) => void } {
  const [shown, setShown] = useState({ path: location.pathname, moved: false });
  useEffect(() => {
    const back = (): void => setShown({ path: location.pathname, moved: true });
    addEventListener("popstate", back);
    return () => removeEventListener("popstate", back);
  }, []);
  const go = useCallback((path: string): void => {
    history.pushState(null, "", path);
    setShown({ path, moved: true });
  }, []);
  return { ...shown, go };
}

function Pages({ path }: { readonly path: string }) {
  const { session, say } = useSpeaking();
  const place = placeOf(path);
  const { jobs: Jobs, job: Job } = pages[session.role];
  if (place.page === "jobs") return <Jobs />;
  if (place.page === "job") return <Job key={place.job} job={place.job} />;
  return <Frame title={say("no-such-page")} news={{ readAt: Date.now() }} inside={true} />;
}

function NotSignedIn({ language, away }: { readonly language: "en" | "es"; readonly away: boolean }) {
  const say = screenWords(language);
  return (
    <div class="drawing">
      <header class="page-head">
        <h1>{away ? "Asburied" : say("not-signed-in")}</h1>
      </header>
      <main>
        <p role="status">{say(away ? "away-first" : "not-signed-in-how")}</p>
      </main>
    </div>
  );
}

/** The whole app: the session decides which pages somebody sees, the company decides language and units. */
export function App() {
  const { path, moved, go } = usePath();
  const { value: session, problem, awaySince, again } = useNews("session", () => ask<SessionView>("/api/session"));
  const language = session?.language ?? (navigator.language.startsWith("es") ? "es" : "en");
  useEffect(() => {
    document.documentElement.lang = language;
  }, [language]);
  const signOut = useCallback((): void => {
    void tell("/api/session/end").then(again);
  }, [again]);
  const say = useMemo(() => screenWords(language), [language]);
  if (session === undefined && problem === undefined && awaySince === undefined) return null;
  if (session === undefined) return <NotSignedIn language={language} away={problem === undefined} />;
  const speaking: Speaking = { session, say, go, moved, signOut };
  return (
    <SpeakingContext.Provider value={speaking}>
      <Pages path={path} />
    </SpeakingContext.Provider>
  );
}
