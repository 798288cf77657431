import { useSpeaking } from "../../parts/speaking.ts";
import { officeNumber } from "../covering/office-number.ts";
import type { ToldOnPhone } from "../told.ts";

interface OfficeCallProps {
  readonly figures: readonly string[];
  /** Their names stand beside what waits for them already. */
  readonly named?: boolean;
  readonly told: ToldOnPhone;
}

/** Figures of design or kit card that are not known: by name, and the office to ask. Nothing is drawn where all are known. */
export function OfficeCall({ figures, named = false, told: { now, sayer } }: OfficeCallProps) {
  const { say } = useSpeaking();
  if (figures.length === 0) return null;
  const number = officeNumber(now.state.settings);
  if (named && number === undefined) return null;
  return (
    <div class="office-call">
      {!named && <p>{say("out-figures-wanted", { figures: [...new Set(figures)].map(sayer.figureTitle).join("; ") })}</p>}
      {number !== undefined && (
        <a class="target" href={`tel:${number.replaceAll(/[^+\d]/g, "")}`}>
          {say("out-ask-office", { number })}
        </a>
      )}
    </div>
  );
}
