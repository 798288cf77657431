import { useSpeaking } from "../parts/speaking.ts";
import type { SheetTaken } from "./opening-sheet.ts";
import { officeReadings } from "./opening-typed.ts";
import { wordsIn } from "./words-in.ts";

/** What the tolerance sheet asks of the office before the site, such as a locate ticket's dates. */
export function OfficeReadings({ sheet, zone }: { readonly sheet: SheetTaken | undefined; readonly zone: string }) {
  const { say, session } = useSpeaking();
  const asked = officeReadings(sheet?.content);
  if (asked.length === 0) return null;
  return (
    <fieldset>
      <legend>{say("opening-office-readings")}</legend>
      <p>{say("opening-zone", { zone })}</p>
      {asked.map((item) =>
        item.quantity === "instant" ? (
          <label key={item.id} class="typed">
            {wordsIn(item.title, session.language)}
            <input type="datetime-local" name={`reading-${item.id}`} />
          </label>
        ) : (
          <label key={item.id} class="typed">
            {wordsIn(item.title, session.language)}
            <input type="text" name={`reading-${item.id}`} maxLength={80} autoComplete="off" placeholder={item.unit?.[session.units]} />
          </label>
        ),
      )}
    </fieldset>
  );
}
