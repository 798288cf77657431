import { CompactSign, importJWK } from "jose";
import { describe, expect, it } from "vitest";
import { type RecordSeal, readSeal } from "#core/proof/index.ts";
import { signatureBy } from "#core/signature/index.ts";
import { sealedSample } from "../../helpers/sealed-record.ts";

// RFC 8037, appendix A.1 to A.4: private key, public key, its thumbprint by RFC 7638, and a JWS made with it.
const rfc = {
  d: "nWGxne_9WmC6hEr0kuwsxERJxWl7MmkZcDusAxyuf2A",
  x: "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo",
  thumbprint: "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k",
  jws: "eyJhbGciOiJFZERTQSJ9.RXhhbXBsZSBvZiBFZDI1NTE5IHNpZ25pbmc.hgyY0il_MGCjP0JzlnLWG1PPOt7-09PGcvMg3AIbQR6dWbhijcNR4ki4iylGjg5BhVsPt9g7sVvpAr_MuM0KAg",
};
const publicKey = { kty: "OKP", crv: "Ed25519", x: rfc.x } as const;
const privateKey = () => importJWK({ ...publicKey, d: rfc.d }, "EdDSA");
const header = { alg: "EdDSA", jwk: publicKey };
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const signature = signatureBy((payload) => new TextDecoder().decode(payload));

// by a variable name: the edge is written for another platform's types than the tests
const [wrappingFile, signFile, keysFile] = ["wrapping", "sign", "keys"].map((name) => `#functions/edge/seals/${name}.ts`) as [
  string,
  string,
  string,
];
const { signingKey } = (await import(keysFile)) as { signingKey: (services: object, author: object) => Promise<unknown> };
type Made = { kid: string; x: string; wrapped: string };
type Outcome<T> = { ok: true; value: T } | { ok: false; refusal: { code: string } };
const { makeKey, unwrapKey } = (await import(wrappingFile)) as {
  makeKey: (secret: string, company: string) => Promise<Made>;
  unwrapKey: (secret: string, company: string, key: Made) => Promise<Outcome<CryptoKey>>;
};
const { signed } = (await import(signFile)) as {
  signed: (seal: unknown, key: { kid: string; x: string; signs: unknown }) => Promise<string>;
};

describe("a signature", () => {
  it("with the key of RFC 8037 is that of its appendix A.4, digit for digit", async () => {
    const made = await new CompactSign(bytes("Example of Ed25519 signing")).setProtectedHeader({ alg: "EdDSA" }).sign(await privateKey());
    expect(made).toBe(rfc.jws);
  });

  it("is checked with the key inside, which is named by the thumbprint of appendix A.3", async () => {
    const made = await new CompactSign(bytes("{}")).setProtectedHeader(header).sign(await privateKey());
    expect(await signature(made)).toEqual({ payload: "{}", x: rfc.x, key: rfc.thumbprint });
    // the vector itself says nothing of its key
    expect(await signature(rfc.jws)).toBeUndefined();
  });

  it("of another algorithm, or of none, is none", async () => {
    const secret = await crypto.subtle.generateKey({ name: "HMAC", hash: "SHA-256" }, false, ["sign"]);
    const hmac = await new CompactSign(bytes("{}")).setProtectedHeader({ ...header, alg: "HS256" }).sign(secret as CryptoKey);
    const base64Url = (value: object): string => Buffer.from(JSON.stringify(value)).toString("base64url");
    expect(await signature(hmac)).toBeUndefined();
    expect(await signature(`${base64Url({ ...header, alg: "none" })}.${base64Url({})}.`)).toBeUndefined();
  });
});

describe("a seal", () => {
  const sealWith = async (change: (seal: RecordSeal) => object): Promise<string> => {
    const { seal } = await sealedSample({ entries: 3 });
    const text = JSON.stringify(change(seal));
    return new CompactSign(bytes(text)).setProtectedHeader(header).sign(await privateKey());
  };

  it("is read as it was signed", async () => {
    const { seal } = await sealedSample({ entries: 3 });
    const text = await signed(seal, { kid: rfc.thumbprint, x: rfc.x, signs: await privateKey() });
    expect(await readSeal(text, signature)).toMatchObject({ ok: true, value: { seal, key: rfc.thumbprint } });
  });

  it("written otherwise is refused, though a lenient reader would take it for the same", async () => {
    const text = await sealWith((seal) => seal);
    const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    const last = alphabet.indexOf(text.at(-1) as string);
    // the two bits that count stay, the four that say nothing are set
    const twin = `${text.slice(0, -1)}${alphabet[last + 5]}`;
    expect(Buffer.from(twin.split(".")[2] ?? "", "base64url")).toEqual(Buffer.from(text.split(".")[2] ?? "", "base64url"));
    for (const other of [twin, `${text}\n`, ` ${text}`, `${text}=`, text.replace(".", ".."), ""])
      expect(await readSeal(other, signature), other.slice(-4)).toMatchObject({ ok: false, refusal: { code: "seal-not-understood" } });
    const flipped = text.replace(/[^.](?=[^.]*$)/, (sign) => (sign === "A" ? "B" : "A"));
    expect(await readSeal(flipped, signature)).toMatchObject({ ok: false, refusal: { code: "seal-signature" } });
  });

  it.each<readonly [string, (seal: RecordSeal) => object]>([
    ["seal/format", (seal) => ({ ...seal, format: 2 })],
    ["seal/company", (seal) => ({ ...seal, company: "" })],
    ["seal/issuedAt", (seal) => ({ ...seal, issuedAt: 1.5 })],
    ["seal/head", (seal) => ({ ...seal, head: { number: 1, hash: "A".repeat(64) } })],
    ["seal/rules", (seal) => ({ ...seal, rules: 1 })],
    ["seal/files", (seal) => ({ ...seal, files: { ...seal.files, more: "a".repeat(64) } })],
    ["seal/photos", (seal) => ({ ...seal, photos: { photo: null } })],
    ["seal/format", () => []],
  ])("that is signed and does not have the shape is refused at %s", async (place, change) => {
    expect(await readSeal(await sealWith(change), signature)).toMatchObject({ ok: false, refusal: { code: "seal-not-understood", place } });
  });
});

describe("where the environment has no secret", () => {
  it.each([undefined, ""])("nothing is sealed, and the refusal says what is missing (%j)", async (secret) => {
    const services = { environment: { SEAL_SECRET: secret } };
    expect(await signingKey(services, { company: "one" })).toEqual({
      ok: false,
      refusal: { code: "seal-key-missing", place: "SEAL_SECRET", figures: {} },
    });
  });
});

describe("a company's key", () => {
  it("is kept wrapped, for this company, this key and this secret alone", async () => {
    const [made, other] = [await makeKey("a secret", "one"), await makeKey("a secret", "one")];
    expect(made.kid).not.toBe(other.kid);
    const key = await unwrapKey("a secret", "one", made);
    if (!key.ok) throw new Error(key.refusal.code);
    expect(key.value.extractable).toBe(false);
    const text = await signed({ any: "thing" }, { kid: made.kid, x: made.x, signs: key.value });
    expect(await signature(text)).toEqual({ payload: '{"any":"thing"}', x: made.x, key: made.kid });
    const refused = { ok: false, refusal: { code: "seal-key-unreadable" } };
    expect(await unwrapKey("another secret", "one", made)).toMatchObject(refused);
    expect(await unwrapKey("a secret", "two", made)).toMatchObject(refused);
    expect(await unwrapKey("a secret", "one", { ...made, kid: other.kid })).toMatchObject(refused);
    expect(await unwrapKey("a secret", "one", { ...made, wrapped: `${made.wrapped.slice(0, -4)}AAAA` })).toMatchObject(refused);
  });
});
