import { browserSupportsWebAuthn, startAuthentication, startRegistration, WebAuthnError } from "@simplewebauthn/browser";
import type { PasskeyAsked, PasskeyMade, WireProblem } from "../../wire/index.ts";
import { type Answer, tell } from "../parts/edge.ts";

/** What came of asking somebody's device: done, or why not. `stopped`: nobody confirmed it. `elsewhere`: passkeys belong to another address. */
export type Ceremony =
  | { readonly is: "done" | "away" | "stopped" | "there" | "unable" }
  | { readonly is: "elsewhere"; readonly origin: string }
  | { readonly is: "refused"; readonly problem: WireProblem };

type Asking<T> = Parameters<(options: { optionsJSON: T }) => void>[0];

async function ceremony<T, Given>(
  options: string,
  confirm: (asking: Asking<T>) => Promise<Given>,
  send: (given: Given) => Promise<Answer<unknown>>,
): Promise<Ceremony> {
  if (!browserSupportsWebAuthn()) return { is: "unable" };
  const asked = await tell<PasskeyAsked>(options);
  if (asked.is !== "given") return asked;
  if (asked.value.origin !== location.origin) return { is: "elsewhere", origin: asked.value.origin };
  try {
    const given = await confirm({ optionsJSON: asked.value.options as unknown as T });
    const answer = await send(given);
    return answer.is === "given" ? { is: "done" } : answer;
  } catch (thrown) {
    // the library throws for whatever the device said but yes
    const isThere = thrown instanceof WebAuthnError && thrown.code === "ERROR_AUTHENTICATOR_PREVIOUSLY_REGISTERED";
    return { is: isThere ? "there" : "stopped" };
  }
}

/** Makes a passkey on this device for whoever is signed in. */
export const makePasskey = (name: string): Promise<Ceremony> =>
  ceremony("/api/passkeys/options", startRegistration, (credential) => tell<PasskeyMade>("/api/passkeys", { name, credential }));

/** Signs in by a passkey that this device offers. */
export const signInByPasskey = (): Promise<Ceremony> =>
  ceremony("/api/sign-in/options", startAuthentication, (credential) => tell<undefined>("/api/sign-in", { credential }));
