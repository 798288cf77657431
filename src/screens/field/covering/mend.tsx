import { useState } from "preact/hooks";
import { askedOf, type Item } from "../../../job/index.ts";
import { readQuantity } from "../../../reading/index.ts";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import type { ToldOnPhone } from "../told.ts";

interface MendProps {
  readonly item: Item;
  readonly unit: string;
  readonly typed: string;
  readonly told: ToldOnPhone;
  readonly onMend: (typed: string, reason: string) => void;
}

/** A reading that was typed otherwise than it was read: typed again, with why; the first stays beside it. */
export function Mend({ item, unit, typed, told, onMend }: MendProps) {
  const { say } = useSpeaking();
  const [text, setText] = useState(typed);
  const [reason, setReason] = useState("");
  const [refused, setRefused] = useState("");
  const mend = (): void => {
    const read = readQuantity(text, askedOf(item, unit));
    const why = !read.ok ? told.sayer.refusal(read.refusal) : reason.trim() === "" ? say("way-say-why") : "";
    setRefused(why);
    if (why === "") onMend(text.trim(), reason.trim());
  };
  return (
    <Section title="mend" look="choices">
      <label class="typed">
        {say("mend-as-read")}
        <input type="text" autoComplete="off" value={text} onInput={(event) => setText(event.currentTarget.value)} />
      </label>
      <label class="typed">
        {say("mend-why")}
        <input type="text" autoComplete="off" value={reason} onInput={(event) => setReason(event.currentTarget.value)} />
      </label>
      <p role="alert">{refused}</p>
      <button type="button" class="target main" onClick={mend}>
        {say("way-enter")}
      </button>
    </Section>
  );
}
