import { useSpeaking } from "../parts/speaking.ts";
import { PhoneFrame } from "./frame.tsx";
import { useKeep } from "./keep/index.ts";
import { dayHere } from "./use-enter.ts";

/** Who enters on this phone today: once a day, and whenever the phone goes to another hand. */
export function PersonPage() {
  const { say, session, go, signOut } = useSpeaking();
  const { keep, state } = useKeep();
  const people = state.people.length > 0 ? state.people : [{ person: session.person, name: session.name }];
  const waiting = [...state.entries, ...state.photos].some(({ standing }) => standing === "not sent");
  const choose = async (one: (typeof people)[number]): Promise<void> => {
    await keep.chooseToday(one, dayHere(Date.now()));
    const after = await keep.draft<string>("after-person");
    await keep.keepDraft("after-person", undefined);
    go(after ?? "/");
  };
  return (
    <PhoneFrame title={say("phone-who")} back={{ to: "/", title: say("open-in-the-ground") }}>
      <ul class="choices">
        {people.map((one) => (
          <li key={one.person}>
            <button type="button" class="target" aria-pressed={state.today?.person === one.person} onClick={() => void choose(one)}>
              {one.name}
            </button>
          </li>
        ))}
      </ul>
      <section class="sign-out">
        {waiting && <p>{say("unsent-sign-out-waits")}</p>}
        <button type="button" class="target" onClick={signOut}>
          {say("sign-out")}
        </button>
      </section>
    </PhoneFrame>
  );
}
