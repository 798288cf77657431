import type { WithheldPart } from "../ledger/index.ts";
import type { ProofSay } from "./speaking.ts";

/** '1, 5–9, 12' */
export function rangesText(numbers: readonly number[]): string {
  const ranges: [number, number][] = [];
  for (const number of [...new Set(numbers)].sort((a, b) => a - b)) {
    const last = ranges.at(-1);
    if (last !== undefined && last[1] === number - 1) last[1] = number;
    else ranges.push([number, number]);
  }
  return ranges.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(", ");
}

const partWords = { what: "part-what", who: "part-who", where: "part-where" } as const;
const reasonWords = { edition: "withheld-edition", erasure: "withheld-erasure", "wrong-job": "withheld-wrong-job" } as const;

/** What is withheld and why, by the numbers of its entries. A reason that is none is a fault of the ledger and stands there. */
export function withheldLines(withheld: readonly WithheldPart[], say: ProofSay): readonly string[] {
  if (withheld.length === 0) return [say("withheld-none")];
  const groups = new Map<string, number[]>();
  for (const { number, part, reason } of withheld) {
    const key = `${part} ${reason}`;
    groups.set(key, [...(groups.get(key) ?? []), number]);
  }
  const lines = [...groups].map(([key, numbers]) => {
    const [part, reason] = key.split(" ") as [keyof typeof partWords, keyof typeof reasonWords];
    const word = reasonWords[reason];
    return say("withheld-line", {
      part: say(partWords[part]),
      reason: word === undefined ? reason : say(word),
      entries: rangesText(numbers),
    });
  });
  return [...lines, say("withheld-proof")];
}
