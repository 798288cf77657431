import { describe, expect, it } from "vitest";
import { renumberStructureIds } from "#functions/print/structure-ids.ts";

const renumbered = (text: string): string => Buffer.from(renumberStructureIds(Buffer.from(text, "latin1"))).toString("latin1");

describe("renumberStructureIds", () => {
  it("numbers ids from 1 in their own order and keeps every length", () => {
    expect(renumbered("/ID (node00000712) /Names [(node00000080) 1 0 R (node00000712) 2 0 R]")).toBe(
      "/ID (node00000002) /Names [(node00000001) 1 0 R (node00000002) 2 0 R]",
    );
  });

  it("leaves everything else alone, bytes above 127 too", () => {
    const text = "(node123) node00000009 (node00000009x \u00ff\u0080 (node0000000) ";
    expect(renumbered(text)).toBe(text);
  });
});
