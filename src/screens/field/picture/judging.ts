import address from "./judge-worker.ts?worker&url";
import type { Looked, ToLookAt } from "./what.ts";

interface Policies {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): string };
}

function startedWorker(): Worker {
  const { trustedTypes } = globalThis as { trustedTypes?: Policies };
  // the one script that is started from here
  const policy = trustedTypes?.createPolicy("asburied-pictures", { createScriptURL: () => address });
  return new Worker(policy?.createScriptURL(address) ?? address);
}

let worker: Worker | undefined;
let count = 0;
let last: Promise<unknown> = Promise.resolve();

/** A worker that has not answered by then has died of the picture. */
const PATIENCE_MS = 20_000;

function lookAt(photo: Blob): Promise<Looked> {
  count += 1;
  const number = count;
  return new Promise((resolve) => {
    const end = (looked: Looked, dead: boolean): void => {
      clearTimeout(timer);
      worker?.removeEventListener("message", hear);
      if (dead) {
        worker?.terminate();
        worker = undefined;
      }
      resolve(looked);
    };
    const fail = (): void => end({ number, judged: { verdict: "not judged" } }, true);
    const hear = ({ data }: MessageEvent<Looked>): void => {
      if (data.number === number) end(data, false);
    };
    const timer = setTimeout(fail, PATIENCE_MS);
    try {
      worker ??= startedWorker();
      worker.addEventListener("message", hear);
      worker.onerror = fail;
      worker.postMessage({ number, photo } satisfies ToLookAt);
    } catch {
      fail();
    }
  });
}

/** Starts the worker before there is a photo, so that the first one need not wait for it. */
export function readyToJudge(): void {
  try {
    worker ??= startedWorker();
  } catch {
    // the photo itself will say that it cannot be judged here
  }
}

/** Opens a photo beside the page, one at a time: whether it can show anything, and a small picture of it. Never rejects. */
export function judgeHere(photo: Blob): Promise<Looked> {
  const looked = last.then(() => lookAt(photo));
  last = looked;
  return looked;
}
