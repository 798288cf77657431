import { useState } from "preact/hooks";
import type { People, SiteList } from "../../wire/index.ts";
import { useSpeaking } from "../parts/speaking.ts";
import type { ScreenWord } from "../parts/words/index.ts";
import { contactFields } from "./opening-typed.ts";
import { siteFields } from "./site-typed.ts";

interface FieldProps {
  readonly name: string;
  readonly word: ScreenWord;
  readonly most: number;
  readonly required?: boolean;
  readonly wrong?: boolean;
  readonly value?: string | undefined;
  readonly mode?: "text" | "tel" | "email" | "decimal";
  readonly figures?: Readonly<Record<string, string>>;
}

/** One line to be typed. */
export function Field({ name, word, most, required = false, wrong = false, value, mode = "text", figures = {} }: FieldProps) {
  const { say } = useSpeaking();
  return (
    <label class="typed">
      {say(word, figures)}
      <input
        type="text"
        name={name}
        inputMode={mode}
        maxLength={most}
        required={required}
        defaultValue={value}
        autoComplete="off"
        aria-invalid={wrong}
        aria-describedby={wrong ? "opening-answer" : undefined}
        {...(required ? { pattern: ".*\\S.*" } : {})}
      />
    </label>
  );
}

/** Customer, contact on site and receiver of the record: three contacts, each of whom may stay empty. */
export function Contacts({
  known = {},
}: {
  readonly known?: Readonly<Record<string, { name?: string; phone?: string; contact?: string }>>;
}) {
  const { say } = useSpeaking();
  return (
    <>
      {contactFields.map((of) => (
        <fieldset key={of}>
          <legend>{say(`opening-${of}`)}</legend>
          <Field name={`${of}-name`} word="opening-contact-name" most={120} value={known[of]?.name} />
          <Field name={`${of}-phone`} word="opening-contact-phone" most={60} mode="tel" value={known[of]?.phone} />
          <Field name={`${of}-contact`} word="opening-contact-mail" most={200} mode="email" value={known[of]?.contact} />
        </fieldset>
      ))}
    </>
  );
}

/** A site that the company has, or a new one with its address, place and marks. */
export function SiteChoice({ sites, wrong }: { readonly sites: SiteList["sites"]; readonly wrong: string | undefined }) {
  const { say, session } = useSpeaking();
  const [chosen, setChosen] = useState("");
  const unit = session.units === "inch" ? "ft" : "m";
  const site = sites.find(({ id }) => id === chosen);
  return (
    <fieldset>
      <legend>{say("opening-site")}</legend>
      <p>{say("opening-site-shared")}</p>
      <label class="typed">
        {say("opening-site-which")}
        <select class="target" name="site" value={chosen} onChange={(event) => setChosen(event.currentTarget.value)}>
          <option value="">{say("opening-site-new")}</option>
          {sites.map(({ id, address, jobs }) => (
            <option key={id} value={id}>
              {say("opening-site-of", { address, count: jobs.length })}
            </option>
          ))}
        </select>
      </label>
      {site ? (
        <p>{[site.heightMark, ...(site.tieMarks ?? [])].filter((mark) => mark !== undefined).join("; ") || say("opening-site-no-marks")}</p>
      ) : (
        <>
          <Field name="address" word="opening-address" most={300} />
          <Field name="heightMark" word="opening-height-mark" most={200} />
          <label class="typed">
            {say("opening-tie-marks")}
            <textarea name="tieMarks" rows={4} maxLength={3000} />
          </label>
          {siteFields.map((field) => (
            <Field key={field} name={field} word={`site-place-${field}`} most={40} figures={{ unit }} wrong={wrong === field} />
          ))}
          <Field name="how" word="site-place-source" most={200} />
        </>
      )}
    </fieldset>
  );
}

/** Who of the crew goes there. */
export function CrewChoice({ people, chosen = [] }: { readonly people: People["people"]; readonly chosen?: readonly string[] }) {
  const { say } = useSpeaking();
  const crew = people.filter(({ role, left }) => role === "crew" && left === undefined);
  return (
    <fieldset>
      <legend>{say("opening-crew")}</legend>
      {crew.length === 0 && <p>{say("opening-crew-none")}</p>}
      {crew.map(({ person, name }) => (
        <label key={person} class="target">
          <input type="checkbox" name="crew" value={person} defaultChecked={chosen.includes(person)} />
          <span>{name}</span>
        </label>
      ))}
    </fieldset>
  );
}
