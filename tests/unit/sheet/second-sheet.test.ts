import { expect, test } from "vitest";
import { sheetFaults } from "#core/job/index.ts";
import file from "../../samples/sheets/ten-items.json" with { type: "json" };

test("a sheet of another trade loads from its file without a fault", () => {
  expect(sheetFaults(file)).toEqual([]);
  expect(file.items.length).toBeGreaterThanOrEqual(10);
  expect(file.items.length).toBeLessThanOrEqual(12);
});
