import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, it } from "vitest";
import { clearances, findings, jobState, readSheet, sheetFaults, type ToleranceSheet } from "#core/job/index.ts";
import { contentDigest, type Json } from "#core/ledger/index.ts";
import { digest } from "#infra/node-digest.ts";
import { damagedValue, retoldValue } from "../../helpers/damage.ts";
import { expectRefusal, fuzz, patience, RUNS } from "../../helpers/fuzz.ts";
import { afterTwoDays, twoDayLedger, twoDaySheetDigest } from "../../samples/two-day-job.ts";

const packaged = (path: string): Json => JSON.parse(readFileSync(new URL(`../../../${path}`, import.meta.url), "utf8"));
const ten = packaged("tests/samples/sheets/ten-items.json");
const whole = ["buried-basin", "old-pond"].map((name) => packaged(`infra/sheets/${name}.json`));
/** A job by the small sheet, told again with the damaged one in its place. */
const job = twoDayLedger(ten as unknown as ToleranceSheet, { order: "as listed" });

/** Every name and number that stands in a sheet. */
const known = (content: Json): readonly unknown[] => {
  const found = new Set<unknown>();
  JSON.stringify(content, (_, value) => {
    if (typeof value === "number" || (typeof value === "string" && /^[a-z][a-z0-9 -]*$/.test(value))) found.add(value);
    return value;
  });
  return [...found];
};

/** As the route that saves a sheet reads it: its canonical form first, then every fault, then what jobs make of it. */
async function saved(content: Json): Promise<"taken" | Parameters<typeof expectRefusal>[0]> {
  const named = await contentDigest(digest, content);
  if (!named.ok) return named.refusal;
  const faults = sheetFaults(content);
  for (const fault of faults) expectRefusal(fault);
  const [first] = faults;
  // what a phone has of it: no throw, whatever it is, and no finding by a sheet that does not read
  const state = jobState({ entries: job.entries, versions: { [twoDaySheetDigest]: content } });
  expect(state.sheet !== undefined).toBe(readSheet(content).ok);
  const found = findings(state);
  expect(clearances(state, found, afterTwoDays).length).toBe(state.sheet?.coverings.length ?? 0);
  return first ?? "taken";
}

it(
  "a small tolerance sheet with damaged fields, read and judged by",
  async () => {
    await fuzz({
      kind: "tolerance sheets",
      inputs: fc.oneof(damagedValue([ten], 3, known(ten)), retoldValue([ten], 6, known(ten))),
      read: (content) => saved(content as Json),
      least: { taken: 0.05, refused: 0.1 },
    });
  },
  patience(20),
);

it(
  "the program's own sheets with damaged fields",
  async () => {
    await fuzz({
      kind: "whole tolerance sheets",
      inputs: fc.oneof(damagedValue(whole, 2, whole.flatMap(known)), retoldValue(whole, 6, whole.flatMap(known))),
      read(content) {
        const faults = sheetFaults(content as Json);
        for (const fault of faults) expectRefusal(fault);
        return faults[0] ?? "taken";
      },
      least: { taken: 0.05, refused: 0.1 },
      runs: Math.ceil(RUNS / 10),
    });
  },
  patience(20),
);
