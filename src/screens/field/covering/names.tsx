import { useState } from "preact/hooks";
import { jobPath } from "../../parts/place.ts";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { stepPath } from "../paths.ts";
import { useTold } from "../told.ts";
import { useEnter } from "../use-enter.ts";
import { nextName } from "./next-name.ts";

/** Names one more joint, glue session or buried point, says what it is and which covering will hide it. */
export function NamesPage({ job, rest: [set = "", step] }: JobPart) {
  const { say, go } = useSpeaking();
  const told = useTold(job);
  const enter = useEnter(job);
  const [tag, setTag] = useState<string>();
  const [description, setDescription] = useState("");
  const [hides, setHides] = useState<string>();
  const [refused, setRefused] = useState("");
  const sheet = told?.now.state.sheet;
  const tagSet = sheet?.tagSets.find(({ id }) => id === set);
  if (told === undefined || tagSet === undefined) return <NotHere />;
  const { now, sayer } = told;
  const known = now.state.tags.filter((one) => one.set === set);
  const name = tag ?? nextName(known.map((one) => one.tag));
  const hiddenBy = hides ?? tagSet.coverings[0] ?? "";
  const from = sheet?.steps.find(({ id }) => id === step);
  const back =
    from === undefined ? { to: jobPath(job), title: now.view.title } : { to: stepPath(job, from.id), title: sayer.words(from.title) };
  const coverings = (sheet?.coverings ?? []).filter(({ id }) => tagSet.coverings.includes(id));
  const send = async (): Promise<void> => {
    if (name.trim() === "" || known.some((one) => one.tag === name.trim())) return setRefused(say("name-taken", { name }));
    const entered = await enter("tag-named", {
      what: { set, tag: name.trim(), hiddenBy, ...(description.trim() === "" ? {} : { description: description.trim() }) },
    });
    if (entered?.is === "kept") go(step === undefined ? jobPath(job) : stepPath(job, step, name.trim()));
    if (entered?.is === "no room") setRefused(say("unsent-full"));
    if (entered?.is === "refused") setRefused(sayer.refusal(entered.refusal));
  };
  return (
    <PhoneFrame title={sayer.words(tagSet.title)} back={back}>
      {known.length > 0 && (
        <p>
          {say("names-known")}:{" "}
          {known.map((one) => (one.description === undefined ? one.tag : `${one.tag} (${one.description})`)).join(", ")}
        </p>
      )}
      <Section title="name-next">
        <label class="typed">
          {say("name-it")}
          <input type="text" value={name} autoComplete="off" onInput={(event) => setTag(event.currentTarget.value)} />
        </label>
        <label class="typed">
          {say("name-what")}
          <input type="text" value={description} autoComplete="off" onInput={(event) => setDescription(event.currentTarget.value)} />
        </label>
        {coverings.length > 1 && (
          <fieldset class="choices">
            <legend>{say("name-hidden-by")}</legend>
            {coverings.map(({ id, title }) => (
              <button key={id} type="button" class="target" aria-pressed={hiddenBy === id} onClick={() => setHides(id)}>
                {sayer.words(title)}
              </button>
            ))}
          </fieldset>
        )}
        <p role="alert">{refused}</p>
        <button type="button" class="target main" onClick={() => void send()}>
          {say("way-enter")}
        </button>
      </Section>
    </PhoneFrame>
  );
}
