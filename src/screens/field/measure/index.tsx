import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { learn } from "../../parts/words/index.ts";
import { measureEn } from "../../parts/words/measure-en.ts";
import { measureEs } from "../../parts/words/measure-es.ts";
import { lensPath } from "../paths.ts";
import { LensPage } from "./lens.tsx";
import { MeasurePage } from "./measure.tsx";

/** Pages that measure in pictures, with their words, which no page that the crew opens first carries. */
const learnt = <T,>(page: T): T => {
  learn({ en: measureEn, es: measureEs });
  return page;
};

export const measurePage = (): typeof MeasurePage => learnt(MeasurePage);
export const lensPage = (): typeof LensPage => learnt(LensPage);
export const lensLink = (): typeof LensLink => learnt(LensLink);

/** The way to this phone's lens. */
function LensLink() {
  const { say } = useSpeaking();
  return (
    <p>
      <Link to={lensPath}>{say("lens-title")}</Link>
    </p>
  );
}
