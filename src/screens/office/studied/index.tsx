import { useMemo, useState } from "preact/hooks";
import type { ToleranceSheet } from "../../../job/index.ts";
import { companyObserved, type StudyFound, sheetWithStudies, studyFound } from "../../../quality/index.ts";
import type { CompanyView } from "../../../wire/index.ts";
import { ask } from "../../parts/edge.ts";
import { Frame } from "../../parts/frame.tsx";
import { Link } from "../../parts/link.tsx";
import { useNews } from "../../parts/news.ts";
import { officePath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { useSheet } from "../opening-sheet.ts";
import { type OwnFacts, readOwnFacts } from "../own-facts.ts";
import { EditSheet } from "../sheets/edit.tsx";
import { wordsIn } from "../words-in.ts";
import { LimitsStudied, PlacingsStudied } from "./tables.tsx";

async function readBoth() {
  const [facts, company] = await Promise.all([readOwnFacts(), ask<CompanyView>("/api/company")]);
  if (facts.is !== "given") return facts;
  if (company.is !== "given") return company;
  return { is: "given" as const, value: { facts: facts.value, company: company.value } };
}

/** The complete studies of what this sheet names, in the order of their days. The zone is of no matter for what they found. */
function studiesOf({ facts }: OwnFacts, sheet: ToleranceSheet): readonly StudyFound[] {
  const { studies } = companyObserved(facts, "UTC");
  return studies
    .filter(({ placing }) => sheet.placings.some(({ id }) => id === placing))
    .flatMap((study) => studyFound(study) ?? [])
    .sort((a, b) => (a.study.day < b.study.day ? -1 : 1));
}

/** One tolerance sheet with what the tape studies found in place of its own doubts: before and after, then saved as a new version. */
export function StudiedPage({ name }: { readonly name: string }) {
  const { say, session } = useSpeaking();
  const news = useNews(`studied ${name}`, readBoth);
  const known = news.value?.company.sheets.find((one) => one.name === name);
  // what was read when the page was opened stays under the hand
  const [first, setFirst] = useState<string>();
  if (first === undefined && known !== undefined) setFirst(known.digest);
  const taken = useSheet(first ?? "");
  const facts = news.value?.facts;
  const [found, setFound] = useState<readonly StudyFound[]>();
  if (found === undefined && facts !== undefined && taken !== undefined) setFound(studiesOf(facts, taken.content));
  const studied = useMemo(() => taken && found && sheetWithStudies(taken.content, found), [taken, found]);
  const own = known === undefined ? name : wordsIn(known.title, session.language) || name;
  return (
    <Frame title={say("studied-title", { title: own })} news={news} inside={true}>
      <p class="looking-keys">
        <Link to={officePath("sheets")}>{say("sheets-open")}</Link>
      </p>
      {news.value !== undefined && known === undefined && <p>{say("no-such-page")}</p>}
      {found?.length === 0 && <p>{say("studied-none")}</p>}
      {taken !== undefined && studied !== undefined && found !== undefined && found.length > 0 && (
        <>
          <PlacingsStudied sheet={taken.content} found={found} />
          <LimitsStudied sheet={taken.content} found={found} />
          <h2>{say("studied-save")}</h2>
          <p>{say("studied-save-how")}</p>
          <EditSheet key={first} taken={taken} begun={studied} saved={news.again} />
        </>
      )}
    </Frame>
  );
}
