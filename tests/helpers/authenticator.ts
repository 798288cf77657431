import { createHash, generateKeyPairSync, type KeyObject, randomBytes, sign } from "node:crypto";

/**
 * An authenticator in software, by W3C Web Authentication Level 3: authenticator data 6.1, none attestation 8.7, COSE keys RFC
 * 9053. It does as it is told, so that a test can have it do what a good one never does.
 */
export interface Told {
  readonly origin: string;
  readonly challenge: string;
  /** The relying party's id that is signed over. */
  readonly party: string;
  readonly verifiesUser?: boolean;
  /** How often it was used; 0 for ever where it does not count. */
  readonly counter?: number;
  readonly userHandle?: string;
}

const sha256 = (bytes: Uint8Array | string): Buffer => createHash("sha256").update(bytes).digest();
const text = (words: string): Buffer => Buffer.concat([Buffer.from([0x60 + words.length]), Buffer.from(words)]);
const bytes = (some: Uint8Array): Buffer => Buffer.concat([Buffer.from([0x59, some.length >> 8, some.length & 0xff]), some]);

const USER_PRESENT = 1;
const USER_VERIFIED = 4;
const CREDENTIAL_DATA = 64;

export class Authenticator {
  readonly id = randomBytes(20);
  readonly #key: KeyObject;
  readonly #x: Buffer;
  readonly #y: Buffer;

  constructor() {
    const { privateKey, publicKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
    const { x = "", y = "" } = publicKey.export({ format: "jwk" });
    this.#key = privateKey;
    [this.#x, this.#y] = [Buffer.from(x, "base64url"), Buffer.from(y, "base64url")];
  }

  #data({ party, verifiesUser = true, counter = 0 }: Told, more: number): Buffer {
    const count = Buffer.alloc(4);
    count.writeUInt32BE(counter);
    return Buffer.concat([sha256(party), Buffer.from([USER_PRESENT | (verifiesUser ? USER_VERIFIED : 0) | more]), count]);
  }

  #client(type: string, { origin, challenge }: Told): Buffer {
    return Buffer.from(JSON.stringify({ type, challenge, origin, crossOrigin: false }));
  }

  /** What `navigator.credentials.create` answers, as JSON. */
  make(told: Told): object {
    // map of kty 2 (EC2), alg -7 (ES256), crv 1 (P-256), x and y
    const key = Buffer.concat([Buffer.from("a5010203262001215820", "hex"), this.#x, Buffer.from("225820", "hex"), this.#y]);
    const length = Buffer.from([0, this.id.length]);
    const data = Buffer.concat([this.#data(told, CREDENTIAL_DATA), Buffer.alloc(16), length, this.id, key]);
    const attestation = Buffer.concat([
      Buffer.from([0xa3]),
      text("fmt"),
      text("none"),
      text("attStmt"),
      Buffer.from([0xa0]),
      text("authData"),
      bytes(data),
    ]);
    return this.#answer({
      clientDataJSON: this.#client("webauthn.create", told).toString("base64url"),
      attestationObject: attestation.toString("base64url"),
      transports: ["internal"],
    });
  }

  /** What `navigator.credentials.get` answers, as JSON. */
  get(told: Told): object {
    const [data, client] = [this.#data(told, 0), this.#client("webauthn.get", told)];
    return this.#answer({
      clientDataJSON: client.toString("base64url"),
      authenticatorData: data.toString("base64url"),
      signature: sign("sha256", Buffer.concat([data, sha256(client)]), this.#key).toString("base64url"),
      ...(told.userHandle === undefined ? {} : { userHandle: told.userHandle }),
    });
  }

  #answer(response: object): object {
    const id = this.id.toString("base64url");
    return { id, rawId: id, type: "public-key", response, clientExtensionResults: {} };
  }
}
