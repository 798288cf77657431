import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { useSpeaking } from "../parts/speaking.ts";
import { signInByPasskey } from "./ceremony.ts";
import { CeremonySays, type CeremonyState } from "./ceremony-says.tsx";
import { Join } from "./join.tsx";

/** A page for whoever is not in yet. */
export function Outside({ title, children }: { readonly title: string; readonly children: ComponentChildren }) {
  useEffect(() => {
    document.title = `${title} · Asburied`;
  }, [title]);
  return (
    <div class="drawing">
      <header class="page-head">
        <h1>{title}</h1>
      </header>
      <main>{children}</main>
    </div>
  );
}

/** The square picture's part of the address. It is never sent to a server with the page. */
const tokenHere = (): string | undefined => /^#([A-Za-z0-9_-]{43})$/.exec(location.hash)?.[1];

/** Taking a phone into use, alone: where the square picture leads. */
export function JoinPage() {
  const { say } = useSpeaking();
  const [token, setToken] = useState(tokenHere);
  useEffect(() => {
    const look = (): void => setToken(tokenHere());
    addEventListener("hashchange", look);
    return () => removeEventListener("hashchange", look);
  }, []);
  return (
    <Outside title={say("join-title")}>
      <Join key={token} token={token} />
    </Outside>
  );
}

/** Both ways in: a passkey for office and owner, a code for the crew. */
export function SignInPage() {
  const { say } = useSpeaking();
  const [state, setState] = useState<CeremonyState>({ is: "ready" });
  const signIn = async (): Promise<void> => {
    if (state.is === "waiting") return;
    setState({ is: "waiting" });
    const came = await signInByPasskey();
    setState(came);
    // whoever was signed out in the middle of something comes back to it
    if (came.is === "done") location.reload();
  };
  return (
    <Outside title={say("sign-in-title")}>
      <section class="access-part">
        <h2>{say("sign-in-office")}</h2>
        <p>{say("sign-in-passkey-how")}</p>
        <button type="button" class="target main" aria-disabled={state.is === "waiting"} onClick={() => void signIn()}>
          {say("sign-in-passkey")}
        </button>
        <CeremonySays state={state} />
        <p>{say("sign-in-first")}</p>
        <p>{say("sign-in-lost")}</p>
      </section>
      <section class="access-part">
        <h2>{say("sign-in-crew")}</h2>
        <Join />
      </section>
    </Outside>
  );
}
