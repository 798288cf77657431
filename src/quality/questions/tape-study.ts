import { message } from "../../job/index.ts";
import { answering, type Candidate, cellOf, columns, fixedCell, label, labelCell, row, standing, table } from "../answering.ts";
import type { Label, Question } from "../question.ts";
import { type StudyFound, studyFound, undecided } from "../study.ts";

const placing = ({ study }: StudyFound): Label => label("placing", study.placing);

function differently(found: StudyFound): Candidate {
  const [most] = [...found.offsets].sort((a, b) => Math.abs(b.offset) - Math.abs(a.offset));
  return {
    about: label("person", most?.person ?? ""),
    what: "holds the rod differently",
    p: found.p,
    says: message("tape-study.differently", { offset: Math.abs(most?.offset ?? 0) }),
  };
}

/** Can the readings be believed: two or three people, the same marks, each twice, blind. */
export const tapeStudy: Question = {
  id: "tape-study",
  reads: [],
  answer: ({ company }, asking) => {
    const found = company.studies.flatMap((study) => studyFound(study) ?? []);
    const counted = [message("tape-study.counted", { studies: company.studies.length, complete: found.length })];
    if (found.length === 0)
      return answering("tape-study", undefined, asking, { tooFew: message("too-few.study"), counted, ...standing([], asking.alpha) });
    const stands = standing(found.map(differently), asking.alpha);
    const open = company.sheets.flatMap((sheet) => undecided(sheet, found).map((check) => label("check", check, sheet.id)));
    const newest = found.at(-1);
    return answering("tape-study", undefined, asking, {
      ...stands,
      counted,
      says: [
        message("tape-study.newest", { halfWidth: newest?.halfWidth ?? 0 }),
        message(open.length > 0 ? "tape-study.undecided" : "tape-study.decided", { limits: open.length }),
      ],
      tables: [
        table(
          "tape-studies",
          columns(
            "placing label",
            "instrument label",
            "day day",
            "people count",
            "marks count",
            "repeatability fixed",
            "between-people fixed",
            "together fixed",
            "half-width fixed",
            "people-differ probability",
          ),
          found.map((one) =>
            row([
              labelCell(placing(one)),
              labelCell(label("instrument", one.study.instrument)),
              cellOf(one.study.day),
              cellOf(one.people.length),
              cellOf(one.marks.length),
              ...[one.repeatability, one.betweenPeople, one.reproducibility, one.halfWidth].map((value) => fixedCell(value, "length")),
              cellOf(one.p),
            ]),
          ),
        ),
        table(
          "tape-people",
          columns("placing label", "person label", "offset fixed"),
          found.flatMap((one) =>
            one.offsets.map(({ person, offset }) =>
              row([labelCell(placing(one)), labelCell(label("person", person)), fixedCell(offset, "length")]),
            ),
          ),
        ),
        table(
          "tape-variance",
          columns("source word", "squares number", "degrees count", "f number", "chance probability"),
          found.flatMap(({ variance }) =>
            (["part", "person", "interaction", "within"] as const).map((source) => {
              const { squares, degrees, f, p } = variance[source];
              // square millimetres: square micrometres have no readable digits
              return row([cellOf(`variance-${source}`), cellOf(squares / 1e6), cellOf(degrees), cellOf(f), cellOf(p)]);
            }),
          ),
        ),
        table(
          "tape-undecided",
          columns("about label"),
          open.map((about) => row([labelCell(about)])),
        ),
      ],
      pictures: [
        {
          draws: "bars",
          id: "tape-shares",
          table: "tape-studies",
          axis: { kind: "share" },
          bars: found.map((one) => ({
            label: placing(one),
            value: one.variance.reproducibility > 0 ? one.variance.repeatability / one.variance.reproducibility : 0,
          })),
        },
      ],
    });
  },
};
