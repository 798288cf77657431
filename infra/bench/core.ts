import { createHash } from "node:crypto";
import { clearances, findings, jobLedgerOf, jobState } from "#core/job/index.ts";
import { canonical, type Json, type Ledger, verify } from "#core/ledger/index.ts";
import { courtyardLedger } from "../demo/index.ts";
import { digest } from "../node-digest.ts";
import { compared, type Line } from "./line.ts";
import { medians } from "./medians.ts";

export interface CoreAsked {
  readonly entries: number;
  readonly rounds: number;
  readonly warm: number;
}

/** Warm: until the compiler has come to an end with what judges and verifies, which takes more than a second. */
export const THREE_HUNDRED: CoreAsked = { entries: 300, rounds: 51, warm: 300 };

/** Of one job's findings and clearances, from its entries, in Node. */
const FINDINGS_MS = 3;

const sha256 = (...parts: readonly (string | Uint8Array)[]): string => {
  const hash = createHash("sha256");
  for (const part of parts) hash.update(part);
  return hash.digest("hex");
};

function textOf(value: unknown): string {
  const text = canonical(value as Json);
  if (!text.ok) throw new Error(`the bench's ledger has no canonical form at ${text.refusal.place}`);
  return text.value;
}

/** What any verifier must do at least: the canonical text of every envelope, part and version, and its hash. Compares nothing. */
function hashesOf({ entries, versions }: Ledger): readonly string[] {
  return [
    ...entries.flatMap(({ envelope, body }) => [
      sha256(textOf(envelope)),
      ...Object.values(body).map((part) => ("salt" in part ? sha256(Buffer.from(part.salt, "hex"), textOf(part.content)) : "")),
    ]),
    ...versions.map(({ content }) => sha256(textOf(content))),
  ];
}

/** A job's findings and clearances beside what they may take, and verifying its ledger beside bare canonical text and hash of the same. */
export async function core({ entries, rounds, warm }: CoreAsked): Promise<readonly Line[]> {
  const ledger = await courtyardLedger(entries);
  const now = (ledger.entries.at(-1)?.envelope.received ?? 0) + 1;
  const taken = jobLedgerOf(ledger);
  const text = JSON.stringify(ledger);
  const whole = await verify(digest, JSON.parse(text));
  if (!whole.ok || ledger.entries.length !== entries) throw new Error("the bench's ledger does not verify");
  const judge = async (): Promise<void> => {
    const state = jobState(taken);
    clearances(state, findings(state), now);
  };
  // by themselves: what judging leaves to the collector would fall on whoever comes next
  const { judged } = await medians([{ name: "judged", run: judge }], rounds, warm);
  const took = await medians(
    [
      { name: "verified", run: () => verify(digest, ledger) },
      { name: "hashed", run: async () => hashesOf(ledger) },
    ],
    rounds,
    warm,
  );
  return [
    {
      what: `findings and clearances of a job with ${entries} entries`,
      unit: "ms",
      ours: judged.time,
      beside: FINDINGS_MS,
      atMost: 1,
      work: judged.work / FINDINGS_MS,
    },
    compared(`ledger of ${entries} entries verified, beside bare canonical text and hash`, took.verified, took.hashed, 1.3),
  ];
}
