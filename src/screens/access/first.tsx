import { useState } from "preact/hooks";
import { Link } from "../parts/link.tsx";
import { useSpeaking } from "../parts/speaking.ts";
import { MakePasskey } from "./make.tsx";
import { Outside } from "./sign-in.tsx";

/** Where a one-time link leads office and owner: a passkey in its place. */
export function FirstPasskeyPage() {
  const { say } = useSpeaking();
  const [made, setMade] = useState(false);
  return (
    <Outside title={say("first-passkey-title")}>
      <section class="access-part">
        {made ? (
          <>
            <p role="status" class="answer">
              {say("passkey-made")}
            </p>
            <p>{say("first-passkey-second")}</p>
            <Link to="/" class="target main">
              {say("passkey-go-on")}
            </Link>
          </>
        ) : (
          <>
            <p>{say("first-passkey-how")}</p>
            <MakePasskey made={() => setMade(true)} />
            <Link to="/">{say("first-passkey-later")}</Link>
          </>
        )}
      </section>
    </Outside>
  );
}
