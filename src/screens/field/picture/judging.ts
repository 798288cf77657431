import { Beside } from "../beside.ts";
import address from "./judge-worker.ts?worker&url";
import type { Looked } from "./what.ts";

const judge = new Beside<Looked>({
  address,
  policy: "asburied-pictures",
  failed: (number) => ({ number, judged: { verdict: "not judged" } }),
});

/** Starts the worker before there is a photo, so that the first one need not wait for it. */
export const readyToJudge = (): void => judge.ready();

/** Opens a photo beside the page, one at a time: whether it can show anything, and a small picture of it. Never rejects. */
export const judgeHere = (photo: Blob): Promise<Looked> => judge.ask(photo);
