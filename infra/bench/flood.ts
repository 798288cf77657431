import { createHash } from "node:crypto";
import { issueToken, makeStore, originalKey } from "#functions/shared/index.ts";
import { Client } from "../demo/index.ts";
import { REGION, type Stack } from "../local/index.ts";
import { type Benched, type Company, withStack } from "./edge-for-bench.ts";
import { cameraJpeg } from "./inputs.ts";
import type { Line } from "./line.ts";
import { median } from "./medians.ts";

export interface FloodAsked {
  readonly phones: number;
  readonly each: number;
  readonly width: number;
  readonly height: number;
  /** Photos by which media's own limit is told. */
  readonly alone: number;
}

export const THOUSAND: FloodAsked = { phones: 50, each: 20, width: 1600, height: 1200, alone: 100 };

/** Asked at once of media alone: more than it works on at a time, so that it never waits for the next. */
const AT_ONCE = 4;

interface Photo {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly sha256: string;
}

/** The same picture with other bytes behind its end: another photo, and the same work. */
function photosOf(jpeg: Uint8Array, name: string, count: number): Photo[] {
  return Array.from({ length: count }, (_, n) => {
    const bytes = new Uint8Array(Buffer.concat([jpeg, Buffer.from(`${name} ${n}`)]));
    return { bytes, sha256: createHash("sha256").update(bytes).digest("hex") };
  });
}

/** Milliseconds for one photo where media has nothing else to do and the photos lie in the store. */
async function mediaAlone({ store: endpoint, bucket, media, secrets }: Stack, photos: readonly Photo[]): Promise<number> {
  const { storeAccessKey: accessKeyId, storeSecretKey: secretAccessKey, serviceSecret } = secrets;
  const store = makeStore({ endpoint, region: REGION, bucket, accessKeyId, secretAccessKey });
  for (const { bytes, sha256 } of photos) {
    const put = await store.put(originalKey("bench-alone", sha256), bytes, { length: bytes.length, type: "image/jpeg", sha256 });
    if (!put.ok) throw new Error(put.refusal.code);
  }
  const waiting = photos.values();
  const began = performance.now();
  const reader = async (): Promise<void> => {
    for (const { sha256 } of waiting) {
      const token = await issueToken(serviceSecret, { audience: "media", subject: `bench-alone/${sha256}`, expires: Date.now() + 60_000 });
      const headers = { authorization: `Bearer ${token}`, connection: "close" };
      const answer = await fetch(`${media}/read`, {
        method: "POST",
        headers,
        body: JSON.stringify({ company: "bench-alone", sha: sha256 }),
      });
      if (!answer.ok) throw new Error(`media answered ${answer.status}`);
      await answer.arrayBuffer();
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, reader));
  return (performance.now() - began) / photos.length;
}

const UNREAD = "SELECT count(*) AS unread FROM photo WHERE company = ?1 AND state <> 'read'";

async function allRead({ bare }: Benched, { id }: Company): Promise<void> {
  for (;;) {
    const [rows] = await bare([[UNREAD, id]]);
    if (rows?.[0]?.unread === 0) return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
}

/** Many phones at once, each sending its photos one after another, until every photo is read; beside media with the machine to itself. */
export const flood = ({ phones, each, width, height, alone }: FloodAsked): Promise<readonly Line[]> =>
  withStack(async (benched) => {
    const { stack } = benched;
    const company = await benched.company();
    const jpeg = await cameraJpeg(width, height);
    const own = await mediaAlone(stack, photosOf(jpeg, "alone", alone));
    const clients: Client[] = [];
    for (let n = 0; n < phones; n += 1) {
      const { link } = await company.owner.send<{ link: string }>("POST", `/api/people/${company.person}/links`);
      clients.push(await new Client(stack.edge).signIn(link));
    }
    const took: number[] = [];
    let refused = 0;
    const began = performance.now();
    await Promise.all(
      clients.map(async (client, n) => {
        for (const { bytes, sha256 } of photosOf(jpeg, `phone ${n}`, each)) {
          const sent = performance.now();
          try {
            await client.putPhoto(sha256, bytes);
          } catch {
            refused += 1;
          }
          took.push(performance.now() - sent);
        }
      }),
    );
    const taken = (performance.now() - began) / took.length;
    await allRead(benched, company);
    const read = (performance.now() - began) / took.length;
    const sorted = took.toSorted((a, b) => a - b);
    const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
    const what = `${phones} phones with ${each} photos each`;
    return [
      { what: `${what}: refused, or broken off five times`, unit: "refused", ours: refused, beside: 1, atMost: 0 },
      { what: `${what}: a photo taken in and read, beside read by media alone`, unit: "ms", ours: read, beside: own },
      { what: `${what}: a photo acknowledged, beside read by media alone`, unit: "ms", ours: taken, beside: own },
      { what: `${what}: 99th percentile of one sending, beside the median`, unit: "ms", ours: at(0.99), beside: median(took) },
    ];
  });
