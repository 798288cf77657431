import { useEffect, useState } from "preact/hooks";
import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import { dayHere } from "../use-enter.ts";
import { distanceText, type Position } from "./where.ts";

const PLACE = "position";
/** A position that the phone still knows is good enough for so long. */
const KNOWN_FOR_MS = 30_000;

interface Said {
  readonly day: string;
  readonly says: "yes" | "no";
}

export interface PositionToday {
  /** `open`: nobody was asked today; `none`: this phone has no such thing. */
  readonly says: "unknown" | "open" | "yes" | "no" | "none";
  readonly position?: Position;
  readonly say: (says: "yes" | "no") => void;
}

/** The phone's place, where somebody allowed it today. Refused once, by him or by the phone, it is not asked for again that day. */
export function usePosition(): PositionToday {
  const { keep } = useKeep();
  const [says, setSays] = useState<PositionToday["says"]>("unknown");
  const [position, setPosition] = useState<Position>();
  useEffect(() => {
    if (!("geolocation" in navigator)) return setSays("none");
    void keep.draft<Said>(PLACE).then((said) => setSays(said?.day === dayHere(Date.now()) ? said.says : "open"));
  }, [keep]);
  const say = (next: "yes" | "no"): void => {
    setSays(next);
    void keep.keepDraft(PLACE, { day: dayHere(Date.now()), says: next } satisfies Said);
  };
  useEffect(() => {
    if (says !== "yes") return;
    const refused = ({ code, PERMISSION_DENIED }: GeolocationPositionError): void => {
      if (code !== PERMISSION_DENIED) return;
      setSays("no");
      void keep.keepDraft(PLACE, { day: dayHere(Date.now()), says: "no" } satisfies Said);
    };
    const watch = navigator.geolocation.watchPosition(setPosition, refused, { enableHighAccuracy: true, maximumAge: KNOWN_FOR_MS });
    return () => navigator.geolocation.clearWatch(watch);
  }, [says, keep]);
  return { says, say, ...(position === undefined ? {} : { position }) };
}

/** Asks once a day whether the place may go along, with the reason; then says what goes along. Nothing waits for an answer. */
export function AskPosition({
  today: { says, position, say: answer },
  why,
}: {
  readonly today: PositionToday;
  readonly why: "position-why" | "right-job-why";
}) {
  const { say, session } = useSpeaking();
  if (says === "unknown" || says === "none") return null;
  if (says === "open")
    return (
      <section class="ask-position">
        <p>{say(why)}</p>
        <div class="two-answers">
          <button type="button" class="target" onClick={() => answer("yes")}>
            {say("position-yes")}
          </button>
          <button type="button" class="target" onClick={() => answer("no")}>
            {say("position-no")}
          </button>
        </div>
      </section>
    );
  if (says === "no") return <p class="position-now">{say("position-off")}</p>;
  return (
    <p class="position-now">
      {position === undefined
        ? say("position-waiting")
        : say("position-with", { doubt: distanceText(position.coords.accuracy * 1e6, session.units, session.language) })}
    </p>
  );
}
