import { makeWarrantySayer } from "../../../record/index.ts";
import { coverStarts, newOwnerRules, replacementRules, serviceKinds } from "../../../warranty/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { Chosen, type Field, Typed } from "./terms-fields.tsx";

/** The terms of one part. */
export function TermPart({ place, field }: { readonly place: number; readonly field: Field }) {
  const { say, session } = useSpeaking();
  const sayer = makeWarrantySayer(session.language);
  const asked = field(`services-${place}`).split(",");
  return (
    <fieldset>
      <legend>{say("terms-part", { number: place + 1 })}</legend>
      <Typed name={`part-${place}`} word="terms-part-name" field={field} />
      <Typed name={`months-${place}`} word="terms-months" field={field} digits={true} />
      <Chosen
        name={`starts-${place}`}
        word="terms-starts"
        field={field}
        mayStayOpen={false}
        choices={coverStarts.map((starts) => ({ value: starts, title: sayer.starts({ starts }) }))}
      />
      <Typed name={`conditions-${place}`} word="terms-conditions" field={field} />
      <Typed name={`registerDays-${place}`} word="terms-register-days" field={field} digits={true} />
      <Typed name={`registerWith-${place}`} word="terms-register-with" field={field} />
      <Chosen
        name={`replacement-${place}`}
        word="terms-replacement"
        field={field}
        choices={replacementRules.map((value) => ({ value, title: say(`terms-replacement-${value}`) }))}
      />
      <Chosen
        name={`newOwner-${place}`}
        word="terms-owner"
        field={field}
        choices={newOwnerRules.map((value) => ({ value, title: say(`terms-owner-${value}`) }))}
      />
      <Typed name={`newOwnerDays-${place}`} word="terms-owner-days" field={field} digits={true} />
      <p>{say("terms-rests-on")}</p>
      {serviceKinds.map((kind) => (
        <label key={kind} class="target">
          <input type="checkbox" name={`services-${place}`} value={kind} defaultChecked={asked.includes(kind)} /> {sayer.serviceName(kind)}
        </label>
      ))}
    </fieldset>
  );
}

/** The services that the company plans. */
export function TermServices({ field }: { readonly field: Field }) {
  const { say, session } = useSpeaking();
  const sayer = makeWarrantySayer(session.language);
  return (
    <>
      <p>{say("terms-services")}</p>
      {serviceKinds.map((kind) => (
        <fieldset key={kind}>
          <legend>{sayer.serviceName(kind)}</legend>
          {kind === "return visit" && <Typed name={`daysAfter ${kind}`} word="terms-days-after" field={field} digits={true} />}
          {(kind === "winter" || kind === "spring") && (
            <>
              <Typed name={`month ${kind}`} word="terms-month" field={field} digits={true} />
              <Typed name={`day ${kind}`} word="terms-day" field={field} digits={true} />
            </>
          )}
          {kind === "yearly" && (
            <label class="target">
              <input type="checkbox" name={`on ${kind}`} value="yes" defaultChecked={field(`on ${kind}`) !== ""} /> {say("terms-yearly")}
            </label>
          )}
          <Typed name={`within ${kind}`} word="terms-within" field={field} digits={true} />
        </fieldset>
      ))}
    </>
  );
}
