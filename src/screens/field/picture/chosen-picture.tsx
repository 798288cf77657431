import type { ComponentChildren } from "preact";
import { useSpeaking } from "../../parts/speaking.ts";
import { CardAsks, CardSaysLine } from "../cards/elsewhere.tsx";
import type { BesideStep, Elsewhere } from "../cards/where-to.ts";
import type { ToldOnPhone } from "../told.ts";
import { JudgedText, SmallPhoto, useSeen } from "./seen.tsx";
import type { Chosen } from "./what.ts";

interface ChosenPictureProps {
  readonly job: string;
  readonly told: ToldOnPhone;
  readonly chosen: Chosen;
  readonly title: string;
  readonly caption: string;
  /** What the cards in it say; absent while they are looked for. */
  readonly card: BesideStep | undefined;
  readonly onCaption: (caption: string) => void;
  readonly onGo: (to: Elsewhere) => void;
  readonly onHere: () => void;
  readonly children: ComponentChildren;
}

function Preview({ chosen, title }: Pick<ChosenPictureProps, "chosen" | "title">) {
  const seen = useSeen(chosen.photo, true);
  return <SmallPhoto seen={seen} title={title} />;
}

/** The photo in hand before it is kept: what this phone makes of it, and a word to it. A card that says another place asks first. */
export function ChosenPicture({ job, told, chosen, title, caption, card, onCaption, onGo, onHere, children }: ChosenPictureProps) {
  const { say } = useSpeaking();
  const preview = <Preview key={chosen.photo.sha256} chosen={chosen} title={title} />;
  if (card?.is === "asks")
    return (
      <section class="chosen-picture">
        {chosen.judged?.verdict === "unreadable" && <JudgedText judged={chosen.judged} />}
        <CardAsks job={job} told={told} {...card} onGo={onGo} onHere={onHere} />
        {preview}
      </section>
    );
  return (
    <section class="chosen-picture">
      <JudgedText judged={chosen.judged} />
      {preview}
      {card?.is === "line" && <CardSaysLine line={card.line} />}
      <label class="typed">
        {say("picture-caption")}
        <input type="text" autoComplete="off" maxLength={2000} value={caption} onInput={(event) => onCaption(event.currentTarget.value)} />
      </label>
      {children}
    </section>
  );
}
