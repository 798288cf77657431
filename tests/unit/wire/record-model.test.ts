import { describe, expect, it } from "vitest";
import { filesOf, type RecordModel } from "#core/record/index.ts";
import { read, storedRecordModel } from "#core/wire/index.ts";
import { releasedPage } from "#templates/record/index.ts";
import { damagedValue } from "../../helpers/damage.ts";
import { fuzz, patience, RUNS } from "../../helpers/fuzz.ts";
import { sampleModel, samplePhotoCount, spanishChange } from "../../samples/record-model.ts";

const shaped = (value: unknown) => read(storedRecordModel, JSON.parse(JSON.stringify(value)), "record-unreadable", "record");
/** Photos as they lie in the store; their bytes are not asked for here. */
const photos = Array.from({ length: samplePhotoCount }, (_, i) => ({
  sha256: i.toString(16).padStart(64, "0"),
  bytes: new Uint8Array(),
  width: 1600,
  height: 1200,
}));
const models: readonly RecordModel[] = [sampleModel(photos), sampleModel(photos, spanishChange)];

describe("a record's view model out of the store", () => {
  it.each(models.map((model) => [model.language, model] as const))("%s: is given back as it was", (_, model) => {
    expect(shaped(model)).toEqual({ ok: true, value: JSON.parse(JSON.stringify(model)) });
  });

  it.each([
    ["no object", "[]"],
    ["an empty one", "{}"],
    ["a step that is none", { steps: [null] }],
    ["findings that are a text", { findings: "all well" }],
    ["a colour that is a style", { company: { name: "n", lines: [], colours: { lines: "red;background:url(//x)" } } }],
    [
      "a picture by a way round",
      { company: { name: "n", lines: [], mark: { photo: "p", rendition: "a/renditions/../../b/originals/x" } } },
    ],
  ])("%s: refused with its place", (_, change) => {
    const value = typeof change === "string" ? JSON.parse(change) : { ...models[0], ...change };
    expect(shaped(value)).toMatchObject({ ok: false, refusal: { code: "record-unreadable" } });
  });

  it(
    "damaged: refused, or a page can be made of it",
    async () => {
      await fuzz({
        kind: "record models",
        inputs: damagedValue(models, 3),
        // a page of each is made
        runs: Math.ceil(RUNS / 8),
        read(value) {
          const model = shaped(value);
          if (!model.ok) return model.refusal;
          const sound = model.value as RecordModel;
          expect(releasedPage(sound, { pdf: "/x", photo: () => ({ missing: "none" }) })).toContain("<html");
          for (const { rendition } of filesOf(sound)) expect(rendition ?? "").not.toContain("..");
          return "taken";
        },
        least: { taken: 0.2, refused: 0.2 },
      });
    },
    patience(30),
  );
});
