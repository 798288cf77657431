import "../node-version.mjs";
import { readFile } from "node:fs/promises";
import { costsShape, costsTable, monthCosts } from "./costs.ts";

/** `npm run costs`, or `npm run costs -- 12 300`: what a month costs for so many crews, by the prices and guesses of `prices.json`. */
const asked = process.argv.slice(2).map(Number);
if (!asked.every((crews) => Number.isSafeInteger(crews) && crews >= 0)) {
  console.error("Say how many crews: npm run costs -- 1 50 5000");
  process.exit(2);
}
const inputs = costsShape.parse(JSON.parse(await readFile(new URL("./prices.json", import.meta.url), "utf8")));
console.log(`${inputs.note}\n${inputs.assumptions.note}\nMonth ${inputs.assumptions.months} of running, ${inputs.currency}:\n`);
console.log(costsTable((asked.length > 0 ? asked : [1, 50, 5000]).map((crews) => monthCosts(crews, inputs))));
