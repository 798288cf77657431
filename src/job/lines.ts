import { waysOutOf } from "./clears.ts";
import type { About } from "./fact.ts";
import type { Finding, Line } from "./finding.ts";
import type { ToleranceSheet } from "./sheet.ts";

/** What a finding is about, as a fact would name it. */
export const aboutOfFinding = (finding: Finding): About => ({
  ...(finding.of === "check" ? { check: finding.check } : { item: finding.check }),
  ...(finding.tag === undefined ? {} : { tag: finding.tag }),
});

const lineKey = (about: About): string => `${about.check ?? ""} ${about.item ?? ""} ${about.tag ?? ""}`;

function lineOf(sheet: ToleranceSheet, finding: Finding, about: About, now: number): Line {
  const item = sheet.items.find((i) => i.id === about.item);
  return {
    about,
    step: item?.step ?? finding.step,
    verdict: finding.verdict,
    reason: finding.says,
    waysOut: waysOutOf(finding, item?.mayNotApply === true),
    ...(finding.from !== undefined && finding.from > now ? { from: finding.from } : {}),
  };
}

/** The lines of findings. A check that waits for items is shown as those items: each once, however many checks wait for it. */
export function linesOf(sheet: ToleranceSheet, found: readonly Finding[], now: number): readonly Line[] {
  const lines = new Map<string, Line>();
  for (const finding of found) {
    const waitsFor =
      finding.of === "check" && finding.missing !== undefined && finding.missing.length > 0 ? finding.missing : [aboutOfFinding(finding)];
    for (const about of waitsFor) {
      const key = lineKey(about);
      if (!lines.has(key)) lines.set(key, lineOf(sheet, finding, about, now));
    }
  }
  return [...lines.values()];
}
