import { useCallback, useEffect, useState } from "preact/hooks";
import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import { cardsIn, keepSaid, saidOf } from "./of-photo.ts";
import { readCards } from "./read-cards.ts";
import { type BesideStep, besideStep } from "./where-to.ts";

/** Keeping a photo waits so long for what its cards say (own). */
const PATIENCE_MS = 3_000;
const noCard: BesideStep = { is: "no card" };

export interface CardBeside {
  /** Undefined without a photo, and while it is looked at. */
  readonly says: BesideStep | undefined;
  /** The same, waited for a little: whoever keeps a photo at once is asked too. */
  readonly soon: () => Promise<BesideStep>;
  /** Whatever a card says, it belongs here. */
  readonly here: () => Promise<void>;
}

interface Photo {
  readonly sha256: string;
  readonly type: string;
}

/** What the cards in a photo in hand say beside the step that it was taken for. */
export function useBesideStep(photo: Photo | undefined, job: string, step: string): CardBeside {
  const { keep } = useKeep();
  const { session } = useSpeaking();
  const [says, setSays] = useState<BesideStep>();
  const { sha256, type } = photo ?? {};
  const look = useCallback(async (): Promise<BesideStep> => {
    if (sha256 === undefined || type === undefined || (await saidOf(keep, sha256)) === "here") return noCard;
    return besideStep(await readCards(keep, session.company, await cardsIn(keep, { sha256, type })), { job, step });
  }, [keep, session.company, sha256, type, job, step]);
  useEffect(() => {
    let here = true;
    setSays(undefined);
    if (sha256 !== undefined) void look().then((beside) => here && setSays(beside));
    return () => {
      here = false;
    };
  }, [look, sha256]);
  return {
    says,
    soon: () => Promise.race([look(), new Promise<BesideStep>((resolve) => setTimeout(() => resolve(noCard), PATIENCE_MS))]),
    here: async () => {
      if (sha256 !== undefined) await keepSaid(keep, sha256, "here");
      setSays(noCard);
    },
  };
}
