import { createHash, webcrypto } from "node:crypto";
import fc from "fast-check";
import { expect, it } from "vitest";
import { digestBy } from "#core/ledger/index.ts";
import { digest } from "#infra/node-digest.ts";
import { anyText } from "./sample.ts";

const ofThePlatform = digestBy({
  sha256: (bytes) => webcrypto.subtle.digest("SHA-256", bytes),
  encode: (text) => new TextEncoder().encode(text),
});

it("is SHA-256 of FIPS 180-4's examples B.1 and B.2 (from memory), in however many pieces", async () => {
  const [short, long] = ["abc", "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"];
  for (const own of [ofThePlatform, digest]) {
    expect(await own(short)).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    expect(await own(long)).toBe("248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    expect(await own(long.slice(0, 7), new TextEncoder().encode(long.slice(7, 9)), long.slice(9))).toBe(await own(long));
    expect(await own()).toBe("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  }
});

it("is Node's own of the bytes that the pieces are, texts as UTF-8", async () => {
  const piece = fc.oneof(anyText, fc.uint8Array({ maxLength: 70 }));
  await fc.assert(
    fc.asyncProperty(fc.array(piece, { maxLength: 4 }), async (pieces) => {
      const bytes = Buffer.concat(pieces.map((one) => Buffer.from(one as string)));
      const whole = createHash("sha256").update(bytes).digest("hex");
      const given = pieces.map((one) => (typeof one === "string" ? one : Uint8Array.from(one)));
      expect(await ofThePlatform(...given)).toBe(whole);
      expect(await digest(...given)).toBe(whole);
    }),
  );
});
