import type { Finding, WayOut } from "./finding.ts";

/** What a finding does to the covering that it holds. */
export type Standing = "clears" | "on word" | "holds";

/**
 * The one table of what clears. A finding that does not clear by its verdict may clear by what was decided about it.
 *
 * | finding | clears |
 * |---|---|
 * | within: in its limits, an accepting answer, a picture not judged unreadable, within after rework | yes |
 * | does not apply: the sheet allows it, or the office said it | yes |
 * | anything with a concession, or inside a departure agreed beforehand | yes |
 * | anything with a go-ahead that the office confirmed | yes |
 * | anything with a go-ahead by telephone | on word |
 * | outside, too close to call, not taken, could not be taken; a limit that waits for an unknown figure | no |
 * | met only from an instant that has not come | no |
 */
export function standingOf(finding: Finding, now: number): Standing {
  const { verdict, from = now, by } = finding;
  if (verdict === "does not apply" || (verdict === "within" && from <= now)) return "clears";
  if (by?.way === "concession" || by?.way === "departure") return "clears";
  if (by?.way === "go-ahead") return by.confirmed ? "clears" : "on word";
  return "holds";
}

const byTelephone: readonly WayOut[] = ["call the office", "go-ahead by telephone"];

/** The ways out of a line, nearest first. */
export function waysOutOf(finding: Finding, mayNotApply: boolean): readonly WayOut[] {
  if (finding.of === "tag set") return ["name it"];
  const isWaiting = finding.missing !== undefined && finding.missing.length > 0;
  if (finding.unknown !== undefined) return [...(isWaiting ? (["take it"] as const) : []), "ask for the figure", ...byTelephone];
  if (finding.verdict === "within") return ["wait", ...byTelephone];
  if (finding.verdict === "not taken")
    return ["take it", ...(mayNotApply ? (["does not apply"] as const) : []), "could not be taken", ...byTelephone];
  if (finding.verdict === "could not be taken") return ["take it", ...byTelephone];
  if (finding.verdict === "too close to call") return ["take it again", ...byTelephone];
  return ["rework it", "take it again", ...byTelephone];
}
