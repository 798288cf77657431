import { setOutPlaces } from "../geometry/index.ts";
import { cementTables } from "../plumbing/index.ts";
import { fixedUnits } from "../units/index.ts";
import { floatOccasions } from "../water/index.ts";
import { among, eitherOf, integer, listOf, notNegative, objectOf, type Shape, text, yesNo } from "./shape.ts";
import {
  checkCosts,
  checkFunctions,
  checkShows,
  choiceMeanings,
  drawnAs,
  flowWays,
  jobMoments,
  leakTests,
  limitFunctions,
  nightMatters,
  passedBefore,
  symptoms,
} from "./sheet.ts";

const words = objectOf({ en: text, "es?": text });
const kind = among(...Object.keys(fixedUnits));
const texts = listOf(text);
const weighted = {
  weight: among("holds", "asked", "if you have it", "open"),
  "holds?": text,
  "switches?": objectOf({ "on?": texts, "off?": texts }),
  "source?": text,
  "customerAccepts?": yesNo,
};
const limit = eitherOf(
  integer,
  objectOf({
    function: among(...limitFunctions),
    "figure?": text,
    "item?": text,
    "items?": texts,
    "occasion?": among(...floatOccasions),
    "offset?": integer,
  }),
);

/** The shape of a tolerance sheet's file. */
export const sheetShape: Shape = objectOf({
  format: among(1),
  id: text,
  version: notNegative,
  title: words,
  switches: listOf(objectOf({ id: text, title: words, standard: yesNo })),
  "cureTable?": among(...Object.keys(cementTables)),
  figures: listOf(
    eitherOf(
      objectOf({ id: text, title: words, kind, unit: text, from: among("design", "kit card") }),
      objectOf({ id: text, title: words, kind: among("text"), from: among("design", "kit card") }),
    ),
  ),
  instruments: listOf(
    objectOf({
      id: text,
      title: words,
      "permittedError?": notNegative,
      "exact?": yesNo,
      resolution: notNegative,
      "line?": among("laser", "string with line level", "spirit level"),
      "receiver?": among("fine", "coarse"),
      "turnedEndForEnd?": yesNo,
    }),
  ),
  placings: listOf(objectOf({ id: text, title: words, halfWidth: notNegative })),
  tagSets: listOf(objectOf({ id: text, title: words, least: notNegative, coverings: texts })),
  coverings: listOf(objectOf({ id: text, title: words, done: words, cautions: texts, "leavesOpen?": words })),
  cautions: listOf(objectOf({ id: text, text: words })),
  steps: listOf(
    objectOf({ id: text, number: notNegative, title: words, cautions: texts, "office?": yesNo, "note?": words, "signed?": yesNo }),
  ),
  "beforehand?": listOf(objectOf({ id: text, title: words, steps: texts })),
  items: listOf(
    objectOf({
      ...weighted,
      id: text,
      step: text,
      kind: among("picture", "reading", "answer"),
      title: words,
      "prompt?": words,
      "tags?": text,
      "whenNoTagOf?": text,
      "mayNotApply?": yesNo,
      "needsHidden?": text,
      "cautions?": texts,
      "apart?": yesNo,
      "marks?": among(...jobMoments),
      "wins?": objectOf({ lower: notNegative, upper: notNegative }),
      "quantity?": kind,
      "unit?": objectOf({ inch: text, metric: text }),
      "signed?": yesNo,
      "instrument?": text,
      "placing?": text,
      "placingAlso?": text,
      "inSetUp?": yesNo,
      "setOut?": among(...setOutPlaces, "finished grade"),
      "tonight?": among(...nightMatters),
      "buriedDepth?": yesNo,
      "onOnePlane?": yesNo,
      "heightMark?": yesNo,
      "fromMark?": yesNo,
      "locates?": words,
      "drawnAs?": among(...drawnAs),
      "choices?": listOf(
        objectOf({ id: text, title: words, accepts: yesNo, "means?": listOf(among(...choiceMeanings)), "caution?": text }),
      ),
    }),
  ),
  oneOf: listOf(objectOf({ id: text, step: text, title: words, holds: text, groups: listOf(objectOf({ title: words, items: texts })) })),
  checks: listOf(
    objectOf({
      ...weighted,
      id: text,
      step: text,
      title: words,
      function: among(...checkFunctions),
      items: texts,
      "minus?": texts,
      "way?": among("along", "across"),
      "places?": among("corners", "quarter points"),
      "until?": text,
      "before?": among(...passedBefore),
      "begins?": text,
      "apart?": notNegative,
      "leak?": among(...leakTests),
      "bucket?": texts,
      "conditions?": texts,
      "weather?": objectOf({ highest: text, lowest: text, humidity: text, wind: text, sunshine: text, "radiation?": text }),
      "ways?": listOf(objectOf({ by: among(...flowWays), items: texts })),
      kind,
      "aim?": limit,
      "lower?": limit,
      "upper?": limit,
      "rule?": among("guarded", "simple acceptance"),
      "stock?": notNegative,
      "costs?": among(...checkCosts),
      "asks?": among("electrician"),
      "shows?": among(...checkShows),
      "reason?": words,
    }),
  ),
  "callbacks?": listOf(
    objectOf({
      symptom: among(...symptoms),
      cautions: texts,
      ask: listOf(words),
      look: listOf(objectOf({ "check?": text, "item?": text, why: words })),
    }),
  ),
});
