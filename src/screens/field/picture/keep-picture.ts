import { useRef, useState } from "preact/hooks";
import type { EntryReference } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import type { CardBeside } from "../cards/beside-step.ts";
import type { Went } from "../cards/elsewhere.tsx";
import { keepSaid } from "../cards/of-photo.ts";
import type { Elsewhere } from "../cards/where-to.ts";
import type { Taking } from "../job-part.ts";
import { useKeep } from "../keep/index.ts";
import { burstPath } from "../paths.ts";
import { useEnter } from "../use-enter.ts";
import { useEnterPicture } from "./enter-picture.ts";
import { emptyDraft, type PictureDraft } from "./picture-draft.ts";
import { picturePlaces } from "./places.ts";
import type { Chosen, Pictured } from "./what.ts";

/** What the page says of what was kept last. */
export interface KeptSaid {
  readonly refused: string;
  readonly kept?: boolean;
  readonly went?: Went;
}

interface Keeping extends Pick<Taking, "job" | "told"> {
  readonly pictured: Pictured;
  readonly draft: PictureDraft;
  readonly change: (next: PictureDraft) => Promise<void>;
  readonly card: CardBeside;
  /** The place that goes along with a photo taken then (phone's clock, ms). */
  readonly whereAt: (taken: number) => Json | undefined;
  readonly onKept: ((entry: string) => void) | undefined;
}

export interface KeepsPicture {
  readonly said: KeptSaid;
  readonly say: (said: KeptSaid) => void;
  /** Something is being kept. */
  readonly busy: boolean;
  /** Keeps what is in hand, in place of another entry where one is named; asks instead where its cards say another place. */
  readonly finish: (instead?: EntryReference) => void;
  /** Puts what is in hand where a card says; what was taken before it stays here. */
  readonly goTo: (to: Elsewhere) => void;
}

/** Keeping the photo in hand, once however often it is pressed. */
export function useKeepPicture({ job, told, pictured, draft, change, card, whereAt, onKept }: Keeping): KeepsPicture {
  const { say, go } = useSpeaking();
  const { keep } = useKeep();
  const enter = useEnter(job);
  const enterPicture = useEnterPicture(job);
  const [said, setSaid] = useState<KeptSaid>({ refused: "" });
  const [busy, setBusy] = useState(false);
  const working = useRef(false);
  const { chosen, before, caption } = draft;

  /** Its cards may still be looked for: a second press meanwhile keeps nothing twice. */
  const once = (work: () => Promise<void>): void => {
    if (working.current) return;
    working.current = true;
    setBusy(true);
    void work().finally(() => {
      working.current = false;
      setBusy(false);
    });
  };

  /** Enters one photo; undefined where it could not be, and the page says why. */
  const entered = async (one: Chosen, words: string, to = pictured): Promise<EntryReference | undefined> => {
    const where = one.where ?? whereAt(one.photo.taken);
    const answer = await enterPicture(to, { ...one, ...(where === undefined ? {} : { where }) }, words);
    if (answer === "lost") setSaid({ refused: say("picture-lost") });
    else if (answer?.is === "no room") setSaid({ refused: say("unsent-full") });
    else if (answer?.is === "refused") setSaid({ refused: told.sayer.refusal(answer.refusal) });
    else if (answer?.is === "kept") return { id: answer.own.id, digest: answer.own.entry.digest ?? "" };
    return undefined;
  };

  const finish = async (instead?: EntryReference): Promise<void> => {
    // the question stands on the page then
    if (chosen === undefined || (await card.soon()).is === "asks") return;
    const replaced: EntryReference[] = instead === undefined ? [] : [instead];
    for (const one of before) {
      const reference = await entered(one, "");
      if (reference === undefined) return;
      replaced.push(reference);
    }
    const own = await entered(chosen, caption);
    if (own === undefined) return;
    for (const entry of replaced)
      await enter("corrected", { what: { entry: { ...entry }, reason: say("picture-replaced"), withdrawn: true } });
    await change(emptyDraft);
    if (onKept === undefined) setSaid({ refused: "", kept: true });
    else onKept(own.id);
  };

  const goTo = async (to: Elsewhere): Promise<void> => {
    if (chosen === undefined) return;
    const { sha256 } = chosen.photo;
    const [open, ...others] = picturePlaces(told).open.filter(({ item }) => item.step === to.step);
    if (to.job === job && open !== undefined && others.length === 0) {
      const there = open.tag === undefined ? { item: open.item.id } : { item: open.item.id, tag: open.tag };
      const own = await entered(chosen, caption, there);
      if (own === undefined) return;
      setSaid({ refused: "", went: { is: "put", entry: own.id, title: told.sayer.title(there) } });
    } else {
      await keepSaid(keep, sha256, undefined);
      if (to.job !== job) await keep.moveLoose(sha256, to.job);
      setSaid({ refused: "", went: { is: "waits", job: to.job, photo: sha256 } });
    }
    await change(before.length === 0 ? emptyDraft : { before, caption: "" });
    // several things can be meant there: they are asked where all photos wait
    if (to.job === job && (open === undefined || others.length > 0)) go(burstPath(job, sha256));
  };

  return { said, say: setSaid, busy, finish: (instead) => once(() => finish(instead)), goTo: (to) => once(() => goTo(to)) };
}
