import { useState } from "preact/hooks";
import { useSpeaking } from "../parts/speaking.ts";
import { makePasskey } from "./ceremony.ts";
import { CeremonySays, type CeremonyState } from "./ceremony-says.tsx";

/** A passkey for this device, with a name. */
export function MakePasskey({ made }: { readonly made: () => void }) {
  const { say } = useSpeaking();
  const [state, setState] = useState<CeremonyState>({ is: "ready" });
  const make = async (form: HTMLFormElement): Promise<void> => {
    const name = String(new FormData(form).get("name") ?? "").trim();
    if (name === "" || state.is === "waiting") return;
    setState({ is: "waiting" });
    const came = await makePasskey(name);
    setState(came);
    if (came.is === "done") made();
  };
  return (
    <form
      class="opening"
      onSubmit={(event) => {
        event.preventDefault();
        void make(event.currentTarget as HTMLFormElement);
      }}
    >
      <label class="typed">
        {say("passkey-name")}
        <input name="name" type="text" maxLength={60} required={true} defaultValue={say("passkey-name-usual")} autoComplete="off" />
      </label>
      <button type="submit" class="target main" aria-disabled={state.is === "waiting"}>
        {say("passkey-make")}
      </button>
      {state.is === "done" ? (
        <p role="status" class="answer">
          {say("passkey-made")}
        </p>
      ) : (
        <CeremonySays state={state} />
      )}
    </form>
  );
}
