import { styleText } from "node:util";
import type { CheckSaid } from "#core/proof/index.ts";

/** Signs in a line of the terminal. */
const WIDTH = 100;

/** Words on lines of at most `WIDTH` signs, those after the first set in. */
export function wrapped(text: string, first: string, further: string): string {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(" ")) {
    if (!empty && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = further;
      empty = true;
    }
    line = empty ? `${line}${word}` : `${line} ${word}`;
    empty = false;
  }
  return [...lines, line].join("\n");
}

/** A check as it stands in the terminal: the answer first, then what it rests on. Colours only where they are shown. */
export function onPaper({ title, tone, standing, by, sections }: CheckSaid, colours: boolean): string {
  const painted = (how: Parameters<typeof styleText>[0], text: string): string =>
    colours ? styleText(how, text, { validateStream: false }) : text;
  const mark = tone === "unchanged" ? painted(["bold", "green"], "=") : painted(["bold", "red"], "≠");
  const head = [...title.map((line) => wrapped(line, "  ", "  ")), ...(title.length > 0 ? [""] : [])];
  const answer = [`${mark} ${painted("bold", wrapped(standing, "", "  "))}`, ...(by === undefined ? [] : [wrapped(by, "  ", "  ")])];
  const numbered = (lines: readonly string[], at: number): readonly string[] =>
    // what was changed is counted, so that it can be spoken of
    lines.map((line, i) => (at === 0 && tone === "changed" ? wrapped(line, `  ${i + 1}. `, "     ") : wrapped(line, "  - ", "    ")));
  const parts = sections.flatMap(({ title: name, lines }, at) => ["", painted("bold", name), ...numbered(lines, at)]);
  return [...head, ...answer, ...parts].join("\n");
}
