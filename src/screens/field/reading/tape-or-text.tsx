import { useEffect, useState } from "preact/hooks";
import type { Item } from "../../../job/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import { type Marks, markText } from "./marks.ts";
import { Tape } from "./tape.tsx";

interface TapeOrTextProps {
  readonly item: Item;
  readonly unit: string;
  /** As it will be entered. */
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly label: string;
}

const inchMarks: readonly Marks[] = ["1/16", "1/8", "1/10"];

/** A length is taken from the drawn tape or typed, whichever comes easier; anything else is typed. */
export function TapeOrText({ item, unit, value, onChange, label }: TapeOrTextProps) {
  const { say, session } = useSpeaking();
  const { keep } = useKeep();
  const inch = session.units === "inch";
  const [marks, setMarks] = useState<Marks>(inch ? "1/16" : "mm");
  const [touched, setTouched] = useState<number>();
  useEffect(() => {
    void keep.draft<Marks>("marks").then((kept) => kept !== undefined && (kept === "mm") !== inch && setMarks(kept));
  }, [keep, inch]);
  // what was entered, or typed over, is no longer what the tape shows
  const shown = touched !== undefined && value === markText(marks, touched) ? touched : undefined;
  const isLength = (item.quantity ?? "length") === "length";
  const choose = (next: Marks): void => {
    setMarks(next);
    setTouched(undefined);
    void keep.keepDraft("marks", next);
  };
  return (
    <>
      {isLength && (
        <>
          <Tape
            key={marks}
            marks={marks}
            value={shown}
            label={label}
            onChange={(next) => {
              setTouched(next);
              onChange(markText(marks, next));
            }}
          />
          {inch && (
            <fieldset class="row-of-three">
              <legend>{say("tape-marks")}</legend>
              {inchMarks.map((one) => (
                <button key={one} type="button" class="target" aria-pressed={one === marks} onClick={() => choose(one)}>
                  {one === "1/10" ? say("tape-tenths") : one}
                </button>
              ))}
            </fieldset>
          )}
        </>
      )}
      <label class="typed">
        {say(isLength ? "reading-or-type" : "reading-type", { unit: unit === "ft-in" ? "ft, in" : unit })}
        <input
          type="text"
          inputMode={isLength ? "text" : "decimal"}
          autoComplete="off"
          value={value}
          onInput={(event) => onChange(event.currentTarget.value)}
        />
      </label>
    </>
  );
}
