import { Link } from "../../parts/link.tsx";
import { phonePath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { learn } from "../../parts/words/index.ts";
import { studyEn } from "../../parts/words/study-en.ts";
import { studyEs } from "../../parts/words/study-es.ts";
import { AgainPage } from "./again.tsx";
import { AgainAsked } from "./again-asked.tsx";
import { InstrumentPage } from "./instrument.tsx";
import { StudyPage } from "./study.tsx";

/** Pages of second looks and of instruments, with their words, which no page that the crew opens first carries. */
const learnt = <T,>(page: T): T => {
  learn({ en: studyEn, es: studyEs });
  return page;
};

export const studyPage = (): typeof StudyPage => learnt(StudyPage);
export const instrumentPage = (): typeof InstrumentPage => learnt(InstrumentPage);
export const againPage = (): typeof AgainPage => learnt(AgainPage);
export const againAsked = (): typeof AgainAsked => learnt(AgainAsked);
export const studyLinks = (): typeof StudyLinks => learnt(StudyLinks);

/** The way to both. */
function StudyLinks() {
  const { say } = useSpeaking();
  return (
    <p class="looking-keys">
      <Link to={phonePath("study")}>{say("study-title")}</Link>
      <Link to={phonePath("instruments")}>{say("check-title")}</Link>
    </p>
  );
}
