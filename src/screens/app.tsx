import type { ComponentChildren, ComponentType } from "preact";
import { lazy, Suspense } from "preact/compat";
import { useCallback, useEffect, useMemo, useState } from "preact/hooks";
import type { SessionView } from "../wire/index.ts";
import { afterPaint } from "./field/keep/after-paint.ts";
import { Keep, KeepContext } from "./field/keep/index.ts";
import { fieldPage } from "./field/pages.tsx";
import { ask, tell } from "./parts/edge.ts";
import { type Newer, startServiceWorker } from "./parts/newer.ts";
import { useNews } from "./parts/news.ts";
import { placeOf } from "./parts/place.ts";
import { nobody, type Speaking, SpeakingContext, useSpeaking } from "./parts/speaking.ts";
import { learn, screenWords } from "./parts/words/index.ts";

type Pages = { readonly jobs: ComponentType; readonly job: ComponentType<{ readonly job: string }> };

/** A page that the crew's phone does not carry, with its words. */
const office = <T,>(page: Promise<T>): Promise<T> =>
  import("./parts/words/office.ts").then(({ officeWords }) => {
    learn(officeWords);
    return page;
  });

const pages: Readonly<Record<"office" | "company owner", Pages>> = {
  office: {
    jobs: lazy(() => office(import("./office/index.tsx")).then(({ OfficeJobs }) => OfficeJobs)),
    job: lazy(() => office(import("./office/index.tsx")).then(({ OfficeJob }) => OfficeJob)),
  },
  "company owner": {
    jobs: lazy(() => office(import("./owner/index.tsx")).then(({ OwnerJobs }) => OwnerJobs)),
    job: lazy(() => office(import("./owner/index.tsx")).then(({ OwnerJob }) => OwnerJob)),
  },
};

const Looking = lazy(() => office(import("./office/looking.tsx")).then((page) => page.Looking));
const Received = lazy(() => office(import("./office/received.tsx")).then((page) => page.Received));
const Blurring = lazy(() => office(import("./office/blurring.tsx")).then((page) => page.Blurring));
const SeenBefore = lazy(() => office(import("./office/seen-before.tsx")).then((page) => page.SeenBefore));
const Moving = lazy(() => office(import("./office/moving.tsx")).then((page) => page.Moving));
const Deciding = lazy(() => office(import("./office/deciding/index.tsx")).then((page) => page.Deciding));
const SitePlace = lazy(() => office(import("./office/site-place.tsx")).then((page) => page.SitePlace));

const SideBySide = lazy(() => office(import("./office/side-by-side/index.tsx")).then((page) => page.SideBySide));
const Papers = lazy(() => office(import("./office/papers.tsx")).then((page) => page.Papers));
const JobVersions = lazy(() => office(import("./office/versions/index.tsx")).then((page) => page.JobVersions));
const Particulars = lazy(() => office(import("./office/particulars.tsx")).then((page) => page.Particulars));
const officePages: Readonly<Record<string, ComponentType>> = {
  company: lazy(() => office(import("./office/company/index.tsx")).then((page) => page.CompanyPage)),
  callbacks: lazy(() => office(import("./office/after-work/callback-list.tsx")).then((page) => page.CallbackListPage)),
  terms: lazy(() => office(import("./office/after-work/terms.tsx")).then((page) => page.TermsPage)),
  warranties: lazy(() => office(import("./office/after-work/register.tsx")).then((page) => page.RegisterPage)),
  opening: lazy(() => office(import("./office/opening.tsx")).then((page) => page.Opening)),
  archive: lazy(() => office(import("./office/archive.tsx")).then((page) => page.ArchiveIn)),
  "laid-aside": lazy(() => office(import("./office/laid-aside.tsx")).then((page) => page.LaidAsidePage)),
  keeping: lazy(() => office(import("./office/persons/keeping.tsx")).then((page) => page.KeepingPage)),
  persons: lazy(() => office(import("./office/persons/index.tsx")).then((page) => page.PersonsPage)),
  sites: lazy(() => office(import("./office/sites.tsx")).then((page) => page.SitesPage)),
  kits: lazy(() => office(import("./office/kits/index.tsx")).then((page) => page.Kits)),
  sheets: lazy(() => office(import("./office/sheets/index.tsx")).then((page) => page.Sheets)),
  people: lazy(() => office(import("./office/people/index.tsx")).then((page) => page.PeoplePage)),
  table: lazy(() => office(import("./office/table.tsx")).then((page) => page.JobsTable)),
};

/** Pages about one of the company's things, by its name. */
const thingPages: Readonly<Record<string, ComponentType<{ readonly name: string }>>> = {
  kits: lazy(() => office(import("./office/kits/index.tsx")).then((page) => page.KitPage)),
  sheets: lazy(() => office(import("./office/sheets/index.tsx")).then((page) => page.SheetPage)),
  persons: lazy(() => office(import("./office/persons/person.tsx")).then((page) => page.PersonPage)),
  studied: lazy(() => office(import("./office/studied/index.tsx")).then((page) => page.StudiedPage)),
};

/** Pages of one job about what comes after the work. */
const afterWork: Readonly<Record<string, ComponentType<{ readonly job: string }>>> = {
  "handed-over": lazy(() => office(import("./office/after-work/handed-over.tsx")).then((page) => page.HandedOverPage)),
  callbacks: lazy(() => office(import("./office/after-work/callbacks.tsx")).then((page) => page.CallbacksPage)),
  warranty: lazy(() => office(import("./office/after-work/warranty.tsx")).then((page) => page.WarrantyPage)),
};

const QuestionPage = lazy(() => office(import("./owner/question.tsx")).then((page) => page.QuestionPage));
const Checking = lazy(() => office(import("./checking/index.tsx")).then((page) => page.Checking));

/** A page of getting in, with its words. */
const access = <Name extends keyof ReturnType<typeof import("./access/index.tsx").accessPages>>(name: Name) =>
  lazy(() => import("./access/index.tsx").then(({ accessPages }) => accessPages()[name]));
const AccessPage = access("AccessPage");
const FirstPasskeyPage = access("FirstPasskeyPage");
const JoinPage = access("JoinPage");
const SignInPage = access("SignInPage");

const NoSuchPage = lazy(() => import("./parts/no-such-page.tsx").then((page) => page.NoSuchPage));

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

/** The newer app that lies ready, once there is one. */
function useNewer(): Newer | undefined {
  const [newer, setNewer] = useState<Newer>();
  useEffect(() => afterPaint(() => void startServiceWorker(setNewer)), []);
  return newer;
}

function Page({ path }: { readonly path: string }) {
  const { session } = useSpeaking();
  const place = placeOf(path);
  const none = <NoSuchPage />;
  if (place.page === "access") return place.first && session.role !== "crew" ? <FirstPasskeyPage /> : <AccessPage />;
  if (session.role === "crew") return fieldPage(place) ?? none;
  const { jobs: Jobs, job: Job } = pages[session.role];
  if (place.page === "jobs") return <Jobs />;
  if (place.page === "owner" && session.role === "company owner") return <QuestionPage key={place.question} question={place.question} />;
  const ThingPage = place.page === "office" && Object.hasOwn(thingPages, place.part) ? thingPages[place.part] : undefined;
  if (place.page === "office" && place.name !== undefined)
    return ThingPage === undefined ? none : <ThingPage key={place.name} name={place.name} />;
  const OfficePage = place.page === "office" && Object.hasOwn(officePages, place.part) ? officePages[place.part] : undefined;
  if (OfficePage !== undefined) return <OfficePage />;
  if (place.page === "job" && place.part === "versions") return <JobVersions key={place.job} job={place.job} />;
  if (place.page === "job" && place.part === "particulars") return <Particulars key={place.job} job={place.job} />;
  const AfterWork = place.page === "job" && Object.hasOwn(afterWork, place.part ?? "") ? afterWork[place.part ?? ""] : undefined;
  if (place.page === "job" && AfterWork !== undefined) return <AfterWork key={place.job} job={place.job} />;
  if (place.page === "job" && place.part === "papers") return <Papers key={place.job} job={place.job} />;
  if (place.page === "job" && place.part === "looking") return <Looking key={place.job} job={place.job} />;
  if (place.page === "job" && place.part === "received") return <Received key={place.job} job={place.job} />;
  if (place.page === "job" && place.part === "seen-before") return <SeenBefore key={place.job} job={place.job} />;
  if (place.page === "job" && place.part === "moving") return <Moving key={place.job} job={place.job} />;
  if (place.page === "job" && place.part === "deciding") return <Deciding key={place.job} job={place.job} rest={place.rest} />;
  if (place.page === "job" && place.part === "site") return <SitePlace key={place.job} job={place.job} />;
  if (place.page === "job" && place.part === "beside" && place.rest[0] !== undefined)
    return <SideBySide key={path} job={place.job} entry={place.rest[0]} />;
  if (place.page === "job" && place.part === "blurring" && place.rest[0] !== undefined)
    return <Blurring key={path} job={place.job} photo={place.rest[0]} />;
  return place.page === "job" && place.part === undefined ? <Job key={place.job} job={place.job} /> : none;
}

/** Why there is nothing to show: the first visit has no signal, or this browser keeps nothing. */
function Nothing({ language, why }: { readonly language: "en" | "es"; readonly why: "away-first" | "store-closed" }) {
  const say = screenWords(language);
  return (
    <div class="drawing">
      <header class="page-head">
        <h1>Asburied</h1>
      </header>
      <main>
        <p role="status">{say(why)}</p>
      </main>
    </div>
  );
}

/** The phone's store, opened before anything is shown: a cold start without signal is drawn from it. */
function usePhone(): Keep | "closed" | undefined {
  const [keep, setKeep] = useState<Keep | "closed">();
  useEffect(() => {
    void Keep.open().then(setKeep, () => setKeep("closed"));
  }, []);
  return keep;
}

/** The whole app: the session decides which pages somebody sees, the company decides language and units. */
export function App() {
  const { path, moved, go } = usePath();
  const phone = usePhone();
  const keep = phone === "closed" ? undefined : phone;
  const newer = useNewer();
  const { value, problem, awaySince, again } = useNews("session", () => ask<SessionView>("/api/session"));
  // a crew's session that has ended, cannot be asked after or is not answered for yet: the phone goes on with what it keeps
  const kept = value === undefined ? keep?.state.session : undefined;
  const session = value ?? kept;
  const crew = session?.role === "crew";
  const isAsked = value !== undefined || problem !== undefined || awaySince !== undefined;
  useEffect(() => (crew && isAsked && keep !== undefined ? keep.start() : undefined), [crew, isAsked, keep]);
  const language = session?.language ?? (navigator.language.startsWith("es") ? "es" : "en");
  useEffect(() => {
    document.documentElement.lang = language;
  }, [language]);
  const signOut = useCallback((): void => {
    void tell("/api/session/end")
      .then(async (answer) => {
        // without an answer the session is still open at the office, and the phone must not look as if it were not
        if (answer.is !== "away") await keep?.forget();
      })
      .then(again);
  }, [again, keep]);
  // every reading of the session brings a new object that says the same
  const own = JSON.stringify(session?.words ?? {});
  const say = useMemo(() => screenWords(language, JSON.parse(own)), [language, own]);
  const alone = (page: ComponentChildren) => (
    <SpeakingContext.Provider value={{ session: session ?? { ...nobody, language }, say, go, moved, signOut }}>
      <Suspense fallback={null}>{page}</Suspense>
    </SpeakingContext.Provider>
  );
  const { page } = placeOf(path);
  if (page === "check") return alone(<Checking session={session} />);
  if (phone === undefined || (session === undefined && problem === undefined && awaySince === undefined)) return null;
  if (page === "join") return alone(<JoinPage />);
  if (session === undefined) return problem === undefined ? <Nothing language={language} why="away-first" /> : alone(<SignInPage />);
  // office and owner keep nothing; a crew's entry that is not kept is lost
  if (crew && keep === undefined) return <Nothing language={language} why="store-closed" />;
  const speaking: Speaking = { session, say, go, moved, signOut };
  return (
    <SpeakingContext.Provider value={speaking}>
      <KeepContext.Provider value={keep}>
        {newer !== undefined && (
          <p class="newer" role="status">
            {say("newer-app")}{" "}
            <button type="button" class="target" onClick={newer.take}>
              {say("take-newer")}
            </button>
          </p>
        )}
        <Suspense fallback={null}>
          <Page path={path} />
        </Suspense>
      </KeepContext.Provider>
    </SpeakingContext.Provider>
  );
}
