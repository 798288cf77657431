import { useEffect, useState } from "preact/hooks";
import type { Unseen } from "../../parts/pictures.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { cardsIn, forgetCards } from "../cards/of-photo.ts";
import { type Keep, photoOf, useKeep } from "../keep/index.ts";
import { judgeHere } from "./judging.ts";
import type { Judged, KeptPhoto, Looked } from "./what.ts";

const judgedPlace = (sha256: string): string => `judged ${sha256}`;

/** A photo's judgement stands on the phone until the photo is entered. */
export const judgedOf = (keep: Keep, sha256: string): Promise<Judged | undefined> => keep.draft<Judged>(judgedPlace(sha256));

/** What was found out about a photo that is entered now, or gone. */
export async function forgetSeen(keep: Keep, sha256: string): Promise<void> {
  await keep.keepDraft(judgedPlace(sha256), undefined);
  await forgetCards(keep, sha256);
}

/** What the worker made of a photo, kept for this phone's pages. */
async function keepLooked(keep: Keep, sha256: string, { judged, small }: Looked): Promise<Judged> {
  if (small !== undefined) await keep.keepSmall(sha256, small);
  await keep.keepDraft(judgedPlace(sha256), judged);
  return judged;
}

/** Photos that are just coming in: a page that already shows one does not open it a second time. */
const beingLookedAt = new Map<string, Promise<Judged>>();

/**
 * What came of a file: its bytes are kept on this phone as they are, or there is no room for them. It is looked at meanwhile, and
 * `tell` hears at once what that found: whoever stands in the hole does not wait for the disk.
 */
export async function takeIn(
  keep: Keep,
  job: string,
  file: File,
  taken: number,
  tell: (judged: Judged) => void = () => {},
): Promise<{ readonly photo: KeptPhoto; readonly judged: Judged } | "no room"> {
  const looking = judgeHere(file).then((looked) => {
    tell(looked.judged);
    return looked;
  });
  const photo = await photoOf(file, taken);
  const { sha256, type, bytes } = photo;
  const judging = looking.then((looked) => keepLooked(keep, sha256, looked));
  beingLookedAt.set(sha256, judging);
  try {
    const [kept, judged] = await Promise.all([keep.keepLoose(job, [photo]), judging]);
    if (kept === "no room") return kept;
    // after the verdict and the disk, which somebody waits for
    void cardsIn(keep, { sha256, type }, file);
    return { photo: { sha256, type, bytes: bytes.byteLength, taken }, judged };
  } finally {
    beingLookedAt.delete(sha256);
  }
}

/** A photo's judgement, once it is there. */
export async function judgedWhenSeen(keep: Keep, sha256: string): Promise<Judged | undefined> {
  await beingLookedAt.get(sha256);
  return judgedOf(keep, sha256);
}

export interface Seen {
  /** Of its small picture; absent where it cannot be drawn here, or not yet. */
  readonly address?: string;
  readonly judged?: Judged;
}

interface ToSee {
  readonly sha256: string;
  readonly type: string;
}

/** The small picture of a photo of this phone, and its judgement where `judging`; made now, one photo at a time, where it was not before. */
export function useSeen({ sha256, type }: ToSee, judging: boolean): Seen {
  const { keep } = useKeep();
  const [seen, setSeen] = useState<Seen>({});
  useEffect(() => {
    let address: string | undefined;
    let here = true;
    const see = async (): Promise<void> => {
      await beingLookedAt.get(sha256);
      let small = await keep.smallOf(sha256);
      let judged = judging ? await judgedOf(keep, sha256) : undefined;
      if (small === undefined || (judging && judged === undefined)) {
        const bytes = await keep.bytesOf(sha256);
        if (bytes !== undefined && here) {
          judged = await keepLooked(keep, sha256, await judgeHere(new Blob([bytes], { type })));
          small = await keep.smallOf(sha256);
        }
      }
      if (!here) return;
      if (small !== undefined) address = URL.createObjectURL(new Blob([small], { type: "image/jpeg" }));
      setSeen({ ...(address === undefined ? {} : { address }), judged: judged ?? { verdict: "not judged" } });
    };
    setSeen({});
    void see();
    return () => {
      here = false;
      if (address !== undefined) URL.revokeObjectURL(address);
    };
  }, [keep, sha256, type, judging]);
  return seen;
}

interface SmallPhotoProps {
  readonly seen: Seen;
  readonly title: string;
  /** Why it cannot be shown, where the phone does not hold it. */
  readonly instead?: Unseen | "picture-not-shown";
}

/** The small picture itself, or an empty mount with words where it cannot be shown. */
export function SmallPhoto({ seen: { address, judged }, title, instead = "picture-not-shown" }: SmallPhotoProps) {
  const { say } = useSpeaking();
  // what another phone took comes from the office, and without signal it does not come
  const [broken, setBroken] = useState("");
  if (address !== undefined && address !== broken)
    return <img class="mount small-photo" src={address} alt={title} onError={() => setBroken(address)} />;
  return <div class="mount small-photo empty">{say(judged === undefined ? "picture-looking" : instead)}</div>;
}

/** What this phone makes of a photo; large where it is to be taken again. */
export function JudgedText({ judged }: { readonly judged: Judged | undefined }) {
  const { say } = useSpeaking();
  if (judged === undefined) return <p role="status">{say("picture-looking")}</p>;
  if (judged.verdict === "unreadable")
    return (
      <p role="alert" class="too-poor">
        {say(`picture-says-${judged.reason}`)}
      </p>
    );
  return <p role="status">{say(judged.verdict === "readable" ? "picture-readable" : "picture-not-judged")}</p>;
}
