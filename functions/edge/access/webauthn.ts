import {
  type AuthenticationResponseJSON,
  generateAuthenticationOptions,
  generateRegistrationOptions,
  type RegistrationResponseJSON,
  verifyAuthenticationResponse,
  verifyRegistrationResponse,
} from "@simplewebauthn/server";
import { decodeAttestationObject, isoBase64URL } from "@simplewebauthn/server/helpers";
import type { Passkey } from "../adapters/passkeys.ts";
import { CHALLENGE_LIFE_MS } from "./lives.ts";
import type { Party } from "./party.ts";

// Loaded when somebody makes or uses a passkey: its library costs each start of the worker more than all routes together.

/** ES256 and RS256 (COSE): what every present authenticator has one of, and workerd verifies. */
const ALGORITHMS = [-7, -257];

/** Of one person in one company: neither a name nor anything that the database uses. */
export async function handleOf(company: string, person: string): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(`passkey ${company} ${person}`)));
}

type Transports = NonNullable<RegistrationResponseJSON["response"]["transports"]>;

interface Maker {
  readonly company: string;
  readonly companyName: string;
  readonly person: string;
  readonly name: string;
}

const bytesOf = (base64Url: string): Uint8Array<ArrayBuffer> => new Uint8Array(isoBase64URL.toBuffer(base64Url));

export async function makingOptions(party: Party, maker: Maker, challenge: string, before: readonly Passkey[]) {
  return generateRegistrationOptions({
    rpName: "Asburied",
    rpID: party.id,
    userName: `${maker.name}, ${maker.companyName}`,
    userDisplayName: maker.name,
    userID: await handleOf(maker.company, maker.person),
    challenge: bytesOf(challenge),
    timeout: CHALLENGE_LIFE_MS,
    attestationType: "none",
    excludeCredentials: before.map(({ credential, transports }) => ({ id: credential, transports: [...transports] as Transports })),
    authenticatorSelection: { residentKey: "required", userVerification: "required" },
    supportedAlgorithmIDs: ALGORITHMS,
  });
}

export type Made = Pick<Passkey, "credential" | "publicKey" | "counter" | "transports" | "synced">;

/** The passkey that an authenticator made, or `undefined`: the library throws for whatever is not as it must be. */
export async function madeBy(party: Party, response: unknown, challenge: string): Promise<Made | undefined> {
  try {
    const given = response as RegistrationResponseJSON;
    // no certificate was asked for; reading one that came all the same could send the edge to an address that it names
    if (decodeAttestationObject(bytesOf(given.response.attestationObject)).get("attStmt").get("x5c") !== undefined) return undefined;
    const { verified, registrationInfo } = await verifyRegistrationResponse({
      response: given,
      expectedChallenge: challenge,
      expectedOrigin: party.origin,
      expectedRPID: party.id,
      requireUserVerification: true,
      supportedAlgorithmIDs: ALGORITHMS,
    });
    if (!verified) return undefined;
    const { credential, credentialBackedUp } = registrationInfo;
    return {
      credential: credential.id,
      publicKey: isoBase64URL.fromBuffer(credential.publicKey),
      counter: credential.counter,
      transports: (credential.transports ?? []).filter((one) => /^[a-z-]{1,20}$/.test(one)).slice(0, 8),
      synced: credentialBackedUp,
    };
  } catch {
    return undefined;
  }
}

/** Without names of credentials: whoever asks learns nothing of who has one here. */
export const signInOptions = (party: Party, challenge: string) =>
  generateAuthenticationOptions({
    rpID: party.id,
    challenge: bytesOf(challenge),
    timeout: CHALLENGE_LIFE_MS,
    userVerification: "required",
  });

/**
 * A public key (ES256, COSE) whose private half was thrown away: what is unknown here is verified with it, so that it takes the
 * same work and the same time as a wrong signature for a passkey that is known.
 */
const NOBODYS_KEY = "pQECAyYgASFYIKn0SfXwr_WksPnJmhY3b7597Vins7zCkbf9mw9On2m7IlggUHGm3lCxWocTI5QVfAnoznWOK5uVLqJPWJb3SVMirTE";

/** Counter and backup state after a right signature by this passkey; `undefined`: not right, or of nobody. */
export async function signedBy(
  party: Party,
  passkey: Passkey | undefined,
  response: unknown,
  challenge: string,
): Promise<{ readonly counter: number; readonly synced: boolean } | undefined> {
  const given = response as AuthenticationResponseJSON;
  try {
    const { verified, authenticationInfo } = await verifyAuthenticationResponse({
      response: given,
      expectedChallenge: challenge,
      expectedOrigin: party.origin,
      expectedRPID: party.id,
      requireUserVerification: true,
      credential: {
        id: passkey?.credential ?? given.id,
        publicKey: bytesOf(passkey?.publicKey ?? NOBODYS_KEY),
        counter: passkey?.counter ?? 0,
      },
    });
    if (!verified || passkey === undefined) return undefined;
    const handle = given.response.userHandle;
    // a passkey that is found without a name says whose it is; it must be that person's
    if (handle !== undefined && handle !== isoBase64URL.fromBuffer(await handleOf(passkey.company, passkey.person))) return undefined;
    return { counter: authenticationInfo.newCounter, synced: authenticationInfo.credentialBackedUp };
  } catch {
    return undefined;
  }
}
