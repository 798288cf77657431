import { expect, test } from "vitest";
import { oncePer } from "../../../src/job/once-per.ts";

test("worked out once for each owner and key, also where the value is undefined", () => {
  const asked: string[] = [];
  const lengthOf = oncePer((owner: readonly string[], key: string): number | undefined => {
    asked.push(`${owner.length} ${key}`);
    return key === "none" ? undefined : owner.length;
  });
  const [one, two] = [["a"], ["a", "b"]];
  expect([lengthOf(one, "x"), lengthOf(one, "x"), lengthOf(two, "x"), lengthOf(one, "none"), lengthOf(one, "none")]).toEqual([
    1,
    1,
    2,
    undefined,
    undefined,
  ]);
  expect(asked).toEqual(["1 x", "2 x", "1 none"]);
});
