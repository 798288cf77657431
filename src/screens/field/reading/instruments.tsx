import { useEffect, useState } from "preact/hooks";
import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import type { ToldOnPhone } from "../told.ts";

/** With what, and from how far, the points of a set-up are read. */
export interface Standing {
  readonly instrument: string;
  readonly receiver?: "fine" | "coarse";
  readonly distance?: { readonly typed: string; readonly unit: string };
}

/** What is entered of a set-up. */
export const setUpWhat = ({ instrument, receiver, distance }: Standing) => ({
  instrument,
  ...(receiver === undefined ? {} : { receiver }),
  ...(distance === undefined ? {} : { distance: { ...distance } }),
});

/** What the set-up stands on: chosen once, and proposed again the next time. */
export function Instruments({ told, begin }: { readonly told: ToldOnPhone; readonly begin: (standing: Standing) => Promise<unknown> }) {
  const { say, session } = useSpeaking();
  const { keep } = useKeep();
  const { now, sayer } = told;
  const unit = session.units === "inch" ? "ft" : "m";
  const all = (now.state.sheet?.instruments ?? []).filter(({ line }) => line === "laser" || line === "string with line level");
  const [chosen, setChosen] = useState<string>();
  const [receiver, setReceiver] = useState<"fine" | "coarse">("fine");
  const [typed, setTyped] = useState("");
  useEffect(() => {
    void keep.draft<Standing>("standing").then((before) => {
      if (before === undefined) return;
      setChosen(before.instrument);
      if (before.receiver !== undefined) setReceiver(before.receiver);
      if (before.distance?.unit === unit) setTyped(before.distance.typed);
    });
  }, [keep, unit]);
  const instrument = all.find(({ id }) => id === chosen) ?? all[0];
  const start = async (): Promise<void> => {
    if (instrument === undefined) return;
    const standing: Standing = {
      instrument: instrument.id,
      ...(instrument.line === "laser" ? { receiver } : {}),
      ...(typed.trim() === "" ? {} : { distance: { typed: typed.trim(), unit } }),
    };
    await keep.keepDraft("standing", standing);
    await begin(standing);
  };
  return (
    <div class="choices">
      <p>
        <b>{say("set-up-with")}</b>
      </p>
      {all.map((one) => (
        <button key={one.id} type="button" class="target" aria-pressed={one === instrument} onClick={() => setChosen(one.id)}>
          {sayer.words(one.title)}
        </button>
      ))}
      {instrument?.line === "laser" && (
        <fieldset class="row-of-two">
          <legend>{say("set-up-receiver")}</legend>
          {(["fine", "coarse"] as const).map((one) => (
            <button key={one} type="button" class="target" aria-pressed={receiver === one} onClick={() => setReceiver(one)}>
              {say(`set-up-receiver-${one}`)}
            </button>
          ))}
        </fieldset>
      )}
      <label class="typed">
        {say("set-up-distance", { unit })}
        <input type="text" inputMode="decimal" autoComplete="off" value={typed} onInput={(event) => setTyped(event.currentTarget.value)} />
      </label>
      <button type="button" class="target main" onClick={() => void start()}>
        {say("set-up-begin")}
      </button>
    </div>
  );
}
