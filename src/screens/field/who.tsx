import { useEffect, useRef } from "preact/hooks";
import { useSpeaking } from "../parts/speaking.ts";
import { useKeep } from "./keep/index.ts";
import { dayHere } from "./use-enter.ts";

/** The crew's people, one press each: whoever is pressed enters on this phone for the rest of the day. */
export function People({ onChosen }: { readonly onChosen?: () => void }) {
  const { session } = useSpeaking();
  const { keep, state } = useKeep();
  const today = state.today?.day === dayHere(keep.now()) ? state.today.person : undefined;
  const people = state.people.length > 0 ? state.people : [{ person: session.person, name: session.name }];
  const choose = async (one: (typeof people)[number]): Promise<void> => {
    await keep.chooseToday(one, dayHere(keep.now()));
    onChosen?.();
  };
  return (
    <ul class="choices">
      {people.map((one) => (
        <li key={one.person}>
          <button type="button" class="target" aria-pressed={today === one.person} onClick={() => void choose(one)}>
            {one.name}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** Asks who enters here, over the page that is open, so that nothing on it is lost: the day may have ended while somebody read a tape. */
export function AskWho() {
  const { say } = useSpeaking();
  const { keep } = useKeep();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
    // whoever goes to another page has left the question open
    return () => keep.leaveWho();
  }, [keep]);
  return (
    <dialog ref={dialog} class="ask-who" aria-labelledby="ask-who" onClose={() => keep.leaveWho()}>
      <h2 id="ask-who">{say("phone-who")}</h2>
      <People />
      <button type="button" class="target" onClick={() => keep.leaveWho()}>
        {say("phone-who-later")}
      </button>
    </dialog>
  );
}
