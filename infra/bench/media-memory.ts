import { type ChildProcess, spawn } from "node:child_process";
import { createHash, randomBytes } from "node:crypto";
import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { issueToken, makeStore, originalKey } from "#functions/shared/index.ts";
import { cameraJpeg } from "./inputs.ts";
import type { Line } from "./line.ts";
import { median } from "./medians.ts";

export interface MemoryAsked {
  readonly width: number;
  readonly height: number;
  /** Photos after which memory is looked at first, and last. */
  readonly first: number;
  readonly last: number;
}

export const FIVE_HUNDRED: MemoryAsked = { width: 4000, height: 3000, first: 100, last: 500 };

/** Readings of memory that a figure is the median of: one alone says when the collector last ran. */
const READINGS = 15;
const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const COMPANY = "bench";

/** Resident memory of the media process itself, asked over HTTP as the edge does, against a store of its own. Linux only. */
export async function mediaMemory({ width, height, first, last }: MemoryAsked): Promise<readonly Line[]> {
  const folder = await mkdtemp(join(tmpdir(), "asburied-bench-"));
  const secret = randomBytes(32).toString("base64url");
  const keys = { STORE_ACCESS_KEY: "bench", STORE_SECRET_KEY: "bench-secret", STORE_BUCKET: "asburied" };
  const running: ChildProcess[] = [];
  try {
    const store = await start("infra/local/store.ts", { ...keys, STORE_DIRECTORY: join(folder, "objects"), STORE_PORT: "0" }, running);
    const endpoint = `http://127.0.0.1:${store.port}`;
    const environment = { ...keys, MEDIA_PORT: "0", SERVICE_SECRET: secret, STORE_ENDPOINT: endpoint, STORE_REGION: "auto" };
    const media = await start("functions/media/main.ts", environment, running);
    const objects = makeStore({ endpoint, region: "auto", bucket: "asburied", accessKeyId: "bench", secretAccessKey: "bench-secret" });
    const photo = await cameraJpeg(width, height);
    const seen: number[] = [];
    for (let n = 0; n < last; n += 1) {
      // Another photo each time: what stands behind the picture's end changes the file and not the work.
      const bytes = Buffer.concat([photo, Buffer.from(`photo ${n}`)]);
      const sha = createHash("sha256").update(bytes).digest("hex");
      const put = await objects.put(originalKey(COMPANY, sha), bytes, { length: bytes.length, type: "image/jpeg", sha256: sha });
      if (!put.ok) throw new Error(put.refusal.code);
      const token = await issueToken(secret, { audience: "media", subject: `${COMPANY}/${sha}`, expires: Date.now() + 60_000 });
      const answer = await fetch(`http://127.0.0.1:${media.port}/read`, {
        method: "POST",
        headers: { authorization: `Bearer ${token}` },
        body: JSON.stringify({ company: COMPANY, sha }),
      });
      const facts = (await answer.json()) as { readonly renditions?: readonly unknown[] };
      if (facts.renditions?.length !== 3) throw new Error("the bench's photo was not read whole");
      await objects.remove(originalKey(COMPANY, sha));
      seen.push(await residentMegabytes(media.pid));
    }
    const around = (n: number): number => median(seen.slice(Math.max(0, n - READINGS), n));
    const what = `memory of media after ${last} photos, beside ${first}`;
    return [{ what, unit: "MB", ours: around(last), beside: around(first), atMost: 1.1 }];
  } finally {
    await Promise.all(running.map(end));
    await rm(folder, { recursive: true, force: true });
  }
}

async function residentMegabytes(pid: number): Promise<number> {
  const found = /^VmRSS:\s+(\d+) kB$/m.exec(await readFile(`/proc/${pid}/status`, "utf8"));
  if (!found) throw new Error("the system does not tell the resident memory");
  return Number(found[1]) / 1024;
}

/** Starts an entry file and waits for its line of readiness. */
async function start(entry: string, environment: Readonly<Record<string, string>>, running: ChildProcess[]) {
  const child = spawn(process.execPath, [entry], { cwd: ROOT, env: environment, stdio: ["ignore", "pipe", "inherit"] });
  running.push(child);
  for await (const line of createInterface({ input: child.stdout })) {
    const ready = line.startsWith("{") ? (JSON.parse(line) as { readonly ready?: boolean; readonly port: number }) : undefined;
    if (ready?.ready) return { port: ready.port, pid: child.pid as number };
  }
  throw new Error(`${entry} ended before it was ready`);
}

const end = (child: ChildProcess): Promise<unknown> =>
  child.exitCode !== null || child.signalCode !== null
    ? Promise.resolve()
    : new Promise((ended) => {
        child.once("exit", ended);
        child.kill("SIGTERM");
      });
