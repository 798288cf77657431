import { useSpeaking } from "../../parts/speaking.ts";
import type { ToldOnPhone } from "../told.ts";

/** Cautions of the tolerance sheet by their names, each once. */
export function Cautions({ of, told: { now, sayer } }: { readonly of: readonly string[]; readonly told: ToldOnPhone }) {
  const { say } = useSpeaking();
  const texts = [...new Set(of)].map((id) => sayer.words(now.state.sheet?.cautions.find((one) => one.id === id)?.text)).filter(Boolean);
  if (texts.length === 0) return null;
  return (
    <div class="cautions">
      <h2>{say("cautions")}</h2>
      {texts.map((text) => (
        <p key={text}>{text}</p>
      ))}
    </div>
  );
}

/** The cautions of the steps in which these items stand. */
export const cautionsOfItems = ({ now }: ToldOnPhone, items: readonly { readonly step: string }[]): readonly string[] => {
  const steps = new Set(items.map(({ step }) => step));
  return (now.state.sheet?.steps ?? []).filter(({ id }) => steps.has(id)).flatMap(({ cautions }) => cautions);
};
