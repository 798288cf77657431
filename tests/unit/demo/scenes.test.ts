import exifr from "exifr";
import { describe, expect, test } from "vitest";
import { cardPlane, photoLength } from "#core/geometry/index.ts";
import { cardLayout, cardSteps, readCard } from "#core/job/index.ts";
import { readCodes } from "#infra/card-read/index.ts";
import { courtyard } from "#infra/demo/courtyard.ts";
import { printedCard, rendering } from "#infra/demo/rendering.ts";
import { type SceneName, scenes } from "#infra/demo/scenes.ts";
import { digest } from "#infra/node-digest.ts";
import { distance, inPicture, plus, project, spotOnSheet, type Vector } from "#infra/scenes/index.ts";
import { defaultSheet } from "#infra/sheets/index.ts";

const measured = courtyard.measured ?? [];
const taken = { wallClock: "2026-05-13T10:14:00", offset: "-05:00", latitude: 41.0021, longitude: -89.1204 };
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

describe("the demo's scenes", () => {
  /** In a tape's own inches: what the script says that the crew read, 25.4 mm each. */
  const read: Readonly<Record<SceneName, number>> = { joints: 2 + 1 / 16, cover: 11.5, patch: 13 / 16 };

  test.each(measured)("$scene: as long as the tape's reading says, the card on the same plane and whole in the picture", async (one) => {
    const { ends, card, camera } = scenes[one.scene]();
    const typed = courtyard.crew.filter((line) => Array.isArray(line) && line[1] === one.item && line[3] === one.tag);
    expect(typed).toHaveLength(1);
    const [whole = 0, over = 0, under = 1] = (/^(?:(\d+) )?(\d+)\/(\d+)$/.exec((typed[0] as readonly string[])[2] ?? "") ?? [])
      .slice(1)
      .map((part) => Number(part ?? 0));
    expect(whole + over / under).toBe(read[one.scene]);
    expect(distance(...ends)).toBeCloseTo(read[one.scene] * 0.0254, 9);
    // half a millimetre is what a card may lie off the plane that is measured
    for (const end of ends) expect(Math.abs(dot(card.up, plus(end, card.middle, -1)))).toBeLessThanOrEqual(0.0005);
    const sheet = await printedCard("demo", "job", one.step);
    const corners = [0, sheet.width].flatMap((x) => [0, sheet.height].map((y) => project(camera, spotOnSheet(sheet, card, x, y))));
    for (const corner of [...corners, ...ends.map((end) => project(camera, end))])
      expect(corner !== undefined && inPicture(camera, corner, 40)).toBe(true);
  });

  test("each stands for a picture that was taken, of the step whose card lies in it", () => {
    const sheet = defaultSheet();
    for (const { picture, tag, step } of measured) {
      expect(courtyard.crew.filter((line) => Array.isArray(line) && line[1] === picture && line[3] === tag)).toHaveLength(1);
      expect(sheet.items.find(({ id }) => id === picture)).toMatchObject({ kind: "picture", step });
      expect(cardSteps(sheet).map(({ id }) => id)).toContain(step);
    }
  });

  test("one as a photo: marked, with its own moment, its card read as the job's, the length found again", { timeout: 30_000 }, async () => {
    const { camera, card, ends } = scenes.patch();
    const { width, height } = camera;
    const printed = await printedCard("demo", "job-1", "liner-laid");
    const bytes = await rendering(scenes.patch(), printed, taken);
    expect(bytes.length).toBeLessThan(200_000);
    const tags = await exifr.parse(Buffer.from(bytes), { reviveValues: false, translateValues: false });
    expect(tags).toMatchObject({ ImageDescription: "Rendering, not a photograph", DateTimeOriginal: "2026:05:13 10:14:00" });
    const { codes } = await readCodes(bytes, printed.codes, { x: 0, y: 0, width, height });
    expect(codes.map(({ name }) => name).sort()).toEqual(["a", "b", "c", "d"]);
    const [first] = printed.codes;
    const said = await readCard(digest, first?.text ?? "", "demo", [{ job: "job-1", steps: ["trench-open", "liner-laid"] }]);
    expect(said).toEqual({ is: "card", job: "job-1", step: "liner-laid", paper: "letter", place: 0 });
    // White gives 0.72 of full light and ink 0.045, in bytes 0.87 and 0.24 of the range: half-way between is 0.27 of light, a third of
    // the way, and lies 0.45 x 0.67 = 0.3 pixels off an edge that blur of 0.6 and the pixel itself make 0.67 wide: 0.43 at a corner.
    for (const { name, corners } of codes) {
      const code = printed.codes.find((one) => one.name === name);
      const { x = 0, y = 0, side = 0 } = code ?? {};
      const square = [
        [x, y],
        [x + side, y],
        [x + side, y + side],
        [x, y + side],
      ] as const;
      for (const [i, [a, b]] of square.entries()) {
        const [u = 0, v = 0] = project(camera, spotOnSheet(printed, card, a, b)) ?? [];
        expect(Math.hypot((corners[i]?.x ?? 0) - u, (corners[i]?.y ?? 0) - v)).toBeLessThan(0.7);
      }
    }
    const plane = cardPlane(cardLayout("letter").codes, { width, height, codes });
    const [from, to] = ends.map((end) => project(camera, end) ?? [0, 0]).map(([x, y]) => ({ x, y }));
    if (!plane.ok || from === undefined || to === undefined) throw new Error("no plane");
    const length = photoLength(plane.value, from, to);
    if (!length.ok) throw new Error(length.refusal.code);
    // 13/16 in is 20,637.5 um; a tap is half a pixel and a pixel half a millimetre here: U is some 2 x 0.7 x 0.5 = 0.7 mm
    expect(Math.abs(length.value.micrometres - 20_637.5)).toBeLessThan(length.value.doubt);
    expect(length.value.doubt).toBeLessThan(1_200);
  });
});
