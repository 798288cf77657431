import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { forbiddenImports, importRules, type Violation } from "#infra/build/imports/index.ts";
import { faults, plantedTree } from "./planted.ts";
import { project } from "./project.ts";

describe("the import rules", () => {
  let found: readonly Violation[] = [];
  let remove = async (): Promise<void> => {};

  beforeAll(async () => {
    const tree = await plantedTree();
    remove = tree.remove;
    found = (await forbiddenImports(tree.root)).violations;
  });
  afterAll(() => remove());

  test("each has a planted fault", () => {
    expect(faults.map(({ rule }) => rule).sort()).toEqual(importRules.map(({ name }) => name).sort());
  });

  test.each(faults)("$rule bites", ({ rule, file }) => {
    expect(found.filter(({ from }) => from === file).map((violation) => violation.rule)).toContain(rule);
  });

  test("nothing else is found in the planted tree", () => {
    const planted = new Set([...faults.map(({ file }) => file), "src/units/planted-way-back.ts"]);
    expect(found.filter(({ from }) => !planted.has(from))).toEqual([]);
  });
});

test("the project breaks none of them", async () => {
  const { files, violations } = await forbiddenImports(project);
  expect(files).toBeGreaterThan(50);
  expect(violations.map(({ from, to, rule }) => `${from} → ${to} (${rule})`)).toEqual([]);
});
