import { useCallback, useEffect, useState } from "preact/hooks";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import { dropFirst, pendingOf, sendFacts } from "./pending.ts";

/** What waits on this phone to go into the company's ledger, sent when there is signal. `turn`: changes when more was kept. */
export function Sending({ turn }: { readonly turn: number }) {
  const { say, session } = useSpeaking();
  const { keep } = useKeep();
  const [waiting, setWaiting] = useState(0);
  const [said, setSaid] = useState("");
  const [refused, setRefused] = useState(false);
  const send = useCallback(async (): Promise<void> => {
    if ((await pendingOf(keep)).length === 0) return setWaiting(0);
    const { last, waiting: left } = await sendFacts(keep);
    setWaiting(left);
    setRefused(last?.is === "refused");
    if (last?.is === "given") setSaid(say("study-sent", { number: last.value.number }));
    if (last?.is === "away") setSaid(say("study-kept"));
    if (last?.is === "refused") setSaid(refusalText(last.problem, session));
  }, [keep, say, session]);
  // more was kept: it is sent at once
  useEffect(() => {
    void send();
    addEventListener("online", send);
    return () => removeEventListener("online", send);
  }, [send, turn]);
  return (
    <div role="status">
      {said !== "" && <p>{said}</p>}
      {waiting > 0 && (
        <button type="button" class="target" onClick={() => void send()}>
          {say("study-send", { count: waiting })}
        </button>
      )}
      {refused && (
        <button type="button" class="target" onClick={() => void dropFirst(keep).then(send)}>
          {say("study-drop")}
        </button>
      )}
    </div>
  );
}
