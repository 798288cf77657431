import { beforeAll, expect, it } from "vitest";
import { fileNames } from "#core/proof/index.ts";
import { changedBytes } from "../helpers/changed-bytes.ts";
import { type SealedSample, sealedSample } from "../helpers/sealed-record.ts";
import { print } from "./ran.ts";

const EACH = 2_000;

let sample: SealedSample;
beforeAll(async () => {
  sample = await sealedSample({ entries: 12 });
});

it.each([1, 2, 3, 4, 5])(
  "of 2,000 bytes changed in the attached files, each alone, none goes unnoticed (%i of 5: 10,000 in all)",
  async (part) => {
    const unnoticed: unknown[] = [];
    let [count, ledger, seal, named] = [0, 0, 0, 0];
    for await (const { file, at, to, check } of changedBytes(sample, EACH, part)) {
      count += 1;
      if (check.standing === "unchanged" || check.faults.length === 0) unnoticed.push({ file, at, to });
      if (file === fileNames.seal) seal += 1;
      if (file === fileNames.seal && check.company !== undefined) unnoticed.push({ file, at, to, company: check.company });
      if (file !== fileNames.ledger) continue;
      ledger += 1;
      if (check.faults.some(({ place }) => /^(entries|versions)\/\d|^head/.test(place))) named += 1;
    }
    print(
      `sealed record, part ${part}: ${count} bytes changed, ${ledger} in the ledger (${named} down to the entry or version), ${seal} in the seal`,
    );
    expect(unnoticed).toEqual([]);
    expect(count).toBe(EACH);
  },
  300_000,
);
