import { useState } from "preact/hooks";
import type { ToleranceSheet } from "../../job/index.ts";
import { useSpeaking } from "../parts/speaking.ts";
import { coveringsBefore, stepsBefore } from "./opening-typed.ts";

/** A job opened late: with which step its record begins. What came before is told as such, and is not missing. */
export function OpenedLate({ sheet }: { readonly sheet: ToleranceSheet | undefined }) {
  const { say, session } = useSpeaking();
  const [late, setLate] = useState(false);
  const [begins, setBegins] = useState("");
  const words = (title: { readonly en: string; readonly es?: string }): string => title[session.language] ?? title.en;
  const before = sheet && begins !== "" ? stepsBefore(sheet, begins) : [];
  const covered = sheet ? coveringsBefore(sheet, before) : [];
  const onSite = sheet?.steps.filter(({ office }) => !office) ?? [];
  return (
    <fieldset>
      <legend>{say("opening-late")}</legend>
      <label class="target">
        <input type="checkbox" name="late" value="late" checked={late} onChange={() => setLate(!late)} />
        <span>{say("opening-late-is")}</span>
      </label>
      {late && (
        <>
          <p>{say("opening-late-how")}</p>
          <label class="typed">
            {say("opening-late-reason")}
            <input type="text" name="lateReason" required={true} maxLength={400} pattern=".*\S.*" autoComplete="off" />
          </label>
          <label class="typed">
            {say("opening-late-begins")}
            <select class="target" name="begins" value={begins} onChange={(event) => setBegins(event.currentTarget.value)}>
              <option value="">{say("opening-late-nothing")}</option>
              {onSite.slice(1).map(({ id, number, title }) => (
                <option key={id} value={id}>
                  {number}. {words(title)}
                </option>
              ))}
            </select>
          </label>
          {sheet?.coverings
            .filter(({ id }) => before.length > 0 && covered.includes(id))
            .map(({ id, done }) => (
              <label key={id} class="target">
                <input type="checkbox" name="coveredBefore" value={id} defaultChecked={true} />
                <span>{say("opening-late-covered", { done: words(done) })}</span>
              </label>
            ))}
        </>
      )}
    </fieldset>
  );
}
