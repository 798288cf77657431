import { expect, it } from "vitest";
import { manyLooks, timed } from "../helpers/many-looks.ts";

// The full form, 10,000 against 1,000,000, is in tests/long.
it("a look-up among 100,000 photos takes at most three times one among 10,000, on Miniflare's D1", async () => {
  const many = await manyLooks();
  try {
    const sizes = [
      { company: "few", count: 10_000 },
      { company: "many", count: 100_000 },
    ];
    for (const { company, count } of sizes) await many.fill(company, count);
    const { medians, found, asked } = await timed(many, sizes, 21);
    const [few = 0, lots = 0] = medians;
    console.log(
      `likeness among 10,000: median ${few.toFixed(1)} ms; among 100,000: ${lots.toFixed(1)} ms; ratio ${(lots / few).toFixed(2)}`,
    );
    expect(found).toBe(asked);
    expect(lots / few).toBeLessThan(3);
  } finally {
    await many.stop();
  }
}, 120_000);
