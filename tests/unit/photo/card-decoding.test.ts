import { expect, test } from "vitest";
import { greyFile } from "#core/photo/index.ts";

test("grey pixels as a file that says its size: the example of the format, by hand (Netpbm PGM, raw)", () => {
  const file = greyFile({ width: 3, height: 2, pixels: new Uint8Array([0, 7, 255, 1, 2, 3]) });
  expect([...file]).toEqual([...new TextEncoder().encode("P5\n3 2\n255\n"), 0, 7, 255, 1, 2, 3]);
});
