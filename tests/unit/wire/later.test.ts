import { readdir, readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import * as z from "zod/mini";
import { later } from "#core/wire/later.ts";

const folder = fileURLToPath(new URL("../../../src/wire/", import.meta.url));
/** A shape that is made while its file is loaded: a constant at the line's beginning that calls for one. */
const AT_ONCE = /^(?:export )?const \w+(?:: [^=]+)? = (?:\{.*)?(?:z\.(?!registry)|text\()/m;

describe("a shape that is made later", () => {
  it("is made when it is first looked at, and once", () => {
    let times = 0;
    const point = later(() => {
      times += 1;
      return z.strictObject({ x: z.int(), y: z.optional(z.int()) });
    });
    const points = later(() => z.array(point));
    expect(times).toBe(0);
    expect(z.safeParse(points, [{ x: 1 }, { x: 2, y: 3 }])).toEqual({ success: true, data: [{ x: 1 }, { x: 2, y: 3 }] });
    expect(z.safeParse(points, [{ x: 1, z: 2 }])).toMatchObject({ success: false, error: { issues: [{ path: [0], keys: ["z"] }] } });
    expect(times).toBe(1);
  });

  it("is the same to whoever extends it, takes parts of it, says it as JSON Schema or asks what it is", () => {
    const plain = z.object({ a: z.string(), b: z.int() });
    const one = later(() => z.object({ a: z.string(), b: z.int() }));
    expect(z.toJSONSchema(one)).toEqual(z.toJSONSchema(plain));
    expect(z.toJSONSchema(z.extend(one, { c: z.boolean() }))).toEqual(z.toJSONSchema(z.extend(plain, { c: z.boolean() })));
    expect(z.toJSONSchema(z.pick(one, { a: true }))).toEqual(z.toJSONSchema(z.pick(plain, { a: true })));
    expect(one instanceof z.ZodMiniObject).toBe(true);
    expect("_zod" in one).toBe(true);
    expect(Object.keys(later(() => ({ a: 1, b: 2 })))).toEqual(["a", "b"]);
  });

  it("is every shape of the wire: loading them makes none", async () => {
    for (const early of ["const a = z.string();", "export const b: Shape = z.object({", "const c = text(80);", "const d = { e: z.int() };"])
      expect(early).toMatch(AT_ONCE);
    for (const late of ["const a = later(() => z.string());", "export const text = (longest = 2000) => z.string();"])
      expect(late).not.toMatch(AT_ONCE);
    const files = (await readdir(folder)).filter((name) => name.endsWith(".ts"));
    expect(files.length).toBeGreaterThan(25);
    for (const file of files)
      expect(`${file}: ${AT_ONCE.exec(await readFile(`${folder}${file}`, "utf8"))?.[0] ?? "none"}`).toBe(`${file}: none`);
  });
});
