import { useMemo } from "preact/hooks";
import type { LimitStanding, ToleranceSheet } from "../../../job/index.ts";
import { lengthText, limitsStudied, type StudyFound, sheetWithStudies } from "../../../quality/index.ts";
import { makeSheetSayer } from "../../../record/index.ts";
import type { QuantityKind } from "../../../units/index.ts";
import { dayInWords, refusalText, useSpeaking } from "../../parts/speaking.ts";
import { wordsIn } from "../words-in.ts";

interface StudiedProps {
  readonly sheet: ToleranceSheet;
  readonly found: readonly StudyFound[];
}

/** What tape or rod rests on: the sheet's own half-width beside that of the newest study. */
export function PlacingsStudied({ sheet, found }: StudiedProps) {
  const { say, session } = useSpeaking();
  const after = sheetWithStudies(sheet, found);
  const lines = sheet.placings.flatMap((placing, i) => {
    const newest = found.findLast(({ study }) => study.placing === placing.id);
    return newest === undefined ? [] : [{ placing, newest, halfWidth: after.placings[i]?.halfWidth ?? placing.halfWidth }];
  });
  return (
    <section>
      <h2>{say("studied-placings")}</h2>
      <div class="table-lines blocks">
        <table>
          <thead>
            <tr>
              {(["studied-placing", "studied-before", "studied-after", "studied-people"] as const).map((word) => (
                <th key={word} scope="col">
                  {say(word)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {lines.map(({ placing, newest, halfWidth }) => (
              <tr key={placing.id}>
                <th scope="row">{wordsIn(placing.title, session.language)}</th>
                <td data-of={say("studied-before")}>± {lengthText(placing.halfWidth, session.units, session.language)}</td>
                <td data-of={say("studied-after")}>± {lengthText(halfWidth, session.units, session.language)}</td>
                <td data-of={say("studied-people")}>
                  {say("studied-of", {
                    people: newest.people.length,
                    marks: newest.marks.length,
                    day: dayInWords(newest.study.day, session.language),
                  })}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

/** The limits that need another room with the study, and whether they can be decided: before and after. */
export function LimitsStudied({ sheet, found }: StudiedProps) {
  const { say, session } = useSpeaking();
  const lines = useMemo(() => limitsStudied(sheet, found), [sheet, found]);
  const sayer = makeSheetSayer(session, [sheet]);
  const stands = (standing: LimitStanding, kind: QuantityKind): string =>
    sayer.standing(standing, kind, (fault) => refusalText({ type: "", title: "", status: 422, detail: "", ...fault }, session));
  return (
    <section>
      <h2>{say("studied-limits")}</h2>
      {lines.length === 0 && <p>{say("studied-limits-none")}</p>}
      {lines.length > 0 && (
        <div class="table-lines blocks">
          <table>
            <thead>
              <tr>
                <th scope="col">{say("studied-limit")}</th>
                <th scope="col">{say("studied-before")}</th>
                <th scope="col">{say("studied-after")}</th>
              </tr>
            </thead>
            <tbody>
              {lines.map(({ check, before, after }) => {
                const of = sheet.checks.find(({ id }) => id === check);
                const kind = (of?.kind ?? "length") as QuantityKind;
                return (
                  <tr key={check} class={after.is === "at fault" ? "bad" : ""}>
                    <th scope="row">{sayer.nameOf(check)}</th>
                    <td data-of={say("studied-before")}>{stands(before, kind)}</td>
                    <td data-of={say("studied-after")}>{stands(after, kind)}</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}
