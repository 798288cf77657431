import { createHash, randomBytes } from "node:crypto";
import { makeStore } from "#functions/shared/index.ts";
import { REGION } from "../local/index.ts";
import { newId, withStack } from "./edge-for-bench.ts";
import { beside, type Line } from "./line.ts";
import { medians } from "./medians.ts";
import { putter } from "./put.ts";

const MB = 1_000_000;
const ROUNDS = 11;
const WARM = 3;

/** Bytes that begin as a JPEG does and cannot be told beforehand; no two are alike. */
function photoOf(bytes: number): { readonly bytes: Uint8Array<ArrayBuffer>; readonly sha256: string } {
  const photo = new Uint8Array(bytes);
  for (let at = 0; at < bytes; at += 65_536) photo.set(randomBytes(Math.min(65_536, bytes - at)), at);
  photo.set([0xff, 0xd8, 0xff, 0xe0]);
  return { bytes: photo, sha256: createHash("sha256").update(photo).digest("hex") };
}

/** A photo sent to the edge, until it is acknowledged, beside a bare signed PUT of the same bytes to the same store. */
export const intake = (): Promise<readonly Line[]> =>
  withStack(async ({ stack, company }) => {
    const { crew } = await company();
    const { storeAccessKey: accessKeyId, storeSecretKey: secretAccessKey } = stack.secrets;
    const store = makeStore({ endpoint: stack.store, region: REGION, bucket: stack.bucket, accessKeyId, secretAccessKey });
    const put = putter(stack.edge, crew.cookie);
    const lines: Line[] = [];
    for (const size of [3 * MB, 20 * MB]) {
      let photo = photoOf(size);
      // What the edge has hinted of a photo is tried by media meanwhile, which finds no picture in it: it is waited for.
      const settle = async (): Promise<void> => {
        for (;;) {
          const seen = await crew.get<{ state: string }>(`/api/photos/${photo.sha256}`);
          if (seen.state !== "stored") break;
          await new Promise((resolve) => setTimeout(resolve, 20));
        }
      };
      const took = await medians(
        [
          {
            name: "bare",
            async run() {
              const put = await store.put(`bench/${newId()}`, photo.bytes, { length: size, type: "image/jpeg", sha256: photo.sha256 });
              if (!put.ok) throw new Error(put.refusal.code);
            },
          },
          {
            name: "edge",
            run: () => put(`/api/photos/${photo.sha256}`, photo.bytes),
            async settle() {
              await settle();
              photo = photoOf(size);
            },
          },
        ],
        ROUNDS,
        WARM,
      );
      lines.push(beside(`photo of ${size / MB} MB taken in, beside a bare signed PUT`, took.edge, took.bare, 1.5));
    }
    return lines;
  });
