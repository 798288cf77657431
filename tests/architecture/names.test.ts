import { existsSync, globSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, test } from "vitest";
import { literalsOf } from "./literals.ts";
import { project } from "./project.ts";
import { sheetIds } from "./sheet-ids.ts";

const refusedNames = /^(utils?|helpers?|common|misc|lib)(\.|$)/i;

describe("names", () => {
  test("nothing is called utils, helpers, common, misc or lib", () => {
    const files = globSync("{src,functions,templates,infra}/**/*", { cwd: project });
    expect(files.length).toBeGreaterThan(50);
    expect(files.filter((file) => refusedNames.test(basename(file)))).toEqual([]);
  });

  test("the refusal of those names bites", () => {
    for (const name of ["utils.ts", "util.ts", "helpers", "Common.ts", "misc.tsx", "lib"]) expect(name).toMatch(refusedNames);
    for (const name of ["library.ts", "commonly.ts", "helper-job.ts"]) expect(name).not.toMatch(refusedNames);
  });

  test("each room of src is entered through an index.ts", () => {
    const roomsThere = globSync("src/*/", { cwd: project }).filter(
      (room) => globSync(`${room}/**/*.{ts,tsx}`, { cwd: project }).length > 0,
    );
    expect(roomsThere.length).toBeGreaterThan(5);
    expect(roomsThere.filter((room) => room !== "src/screens" && !existsSync(join(project, room, "index.ts")))).toEqual([]);
  });
});

describe("a tolerance sheet is data and nothing else", () => {
  const ids = sheetIds(globSync("infra/sheets/*.json", { cwd: project }).map((file) => readFileSync(join(project, file), "utf8")));

  test("there is a sheet to look for", () => {
    expect(ids.size).toBeGreaterThan(20);
  });

  test("no id of a sheet stands in the program", () => {
    const files = globSync("{src,functions,templates}/**/*.{ts,tsx}", { cwd: project });
    const found = files.flatMap((file) =>
      literalsOf(readFileSync(join(project, file), "utf8"))
        .filter((literal) => ids.has(literal))
        .map((literal) => `${file}: "${literal}"`),
    );
    expect(found).toEqual([]);
  });

  test("the search bites", () => {
    const planted = sheetIds([
      JSON.stringify({
        steps: [{ id: "side-wall-fitting" }],
        items: [{ id: "gasket-wet-side" }],
        checks: [{ id: "rim-level" }],
        coverings: [{ id: "fill-trench" }],
      }),
    ]);
    expect([...planted].sort()).toEqual(["fill-trench", "gasket-wet-side", "rim-level", "side-wall-fitting"]);
    const text = "const a = \"gasket-wet-side\"; // 'rim-level'\nconst b = 'fill-trench', c = `side-wall-fitting`, d = \"gasket-wet\";";
    expect(literalsOf(text).filter((literal) => planted.has(literal))).toEqual(["gasket-wet-side", "fill-trench", "side-wall-fitting"]);
  });
});
