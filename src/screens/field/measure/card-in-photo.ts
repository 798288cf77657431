import { readCard, type Whats } from "../../../job/index.ts";
import type { Digest } from "../../../ledger/index.ts";
import type { CardPaper } from "../../../photo/index.ts";
import type { CardsSeen, CodeSeen } from "../cards/seen.ts";

type Codes = Whats["photo-measured"]["codes"];
type Spots = Codes[number]["corners"];

/** What a picture has of a card to measure by, or why it has none. */
export type CardInPhoto =
  | {
      readonly is: "card";
      readonly paper: CardPaper;
      readonly codes: Codes;
      readonly width: number;
      readonly height: number;
      /** Absent on a card for any step. */
      readonly step?: string;
    }
  | { readonly is: "not looked" | "none" | "several" | "another job" | "another company" | "not read" };

/** What is measured here: its company, job and the steps of its tolerance sheet. */
export interface CardOfJob {
  readonly company: string;
  readonly job: string;
  readonly steps: readonly string[];
}

/** Thousandths of a pixel, as they are entered; a doubt is never rounded down. */
export const thousandths = ({ x, y, u }: { readonly x: number; readonly y: number; readonly u: number }) =>
  [Math.round(1000 * x), Math.round(1000 * y), Math.max(1, Math.ceil(1000 * u))] as const;

const spotsOf = ({ corners: [a, b, c, d] }: CodeSeen): Spots => [thousandths(a), thousandths(b), thousandths(c), thousandths(d)];

/** The card that lies in a picture, from the codes that were seen: of this job, one card and no other. */
export async function cardInPhoto(digest: Digest, seen: CardsSeen, { company, job, steps }: CardOfJob): Promise<CardInPhoto> {
  if (seen.is !== "looked") return { is: "not looked" };
  const { width, height, codes } = seen;
  const reads = await Promise.all(
    codes.map(async (code) => ({ code, read: await readCard(digest, code.text, company, [{ job, steps }]) })),
  );
  const read = reads.flatMap(({ code, read: one }) => (one.is === "card" ? [{ code, ...one }] : []));
  const others = reads.map(({ read: one }) => one.is).filter((is) => is !== "card" && is !== "not a card");
  const [first] = read;
  if (first === undefined) {
    if (others.includes("job unknown")) return { is: "another job" };
    if (others.includes("another company")) return { is: "another company" };
    return { is: others.length > 0 ? "not read" : "none" };
  }
  const isOne = read.every(({ paper, step }) => paper === first.paper && step === first.step);
  // a second card, of whatever job, may be the one that lies on the plane
  if (!isOne || new Set(read.map(({ place }) => place)).size < read.length || others.includes("job unknown")) return { is: "several" };
  const inOrder = [...read].sort((a, b) => a.place - b.place);
  return {
    ...{ is: "card", paper: first.paper, width, height },
    codes: inOrder.map(({ code, place }) => ({ place, corners: spotsOf(code) })),
    ...(first.step === undefined ? {} : { step: first.step }),
  };
}
