import { type Checked, type Recorded, type Source, type Standing, standings } from "./checked.ts";
import { notChecked } from "./not-checked.ts";

const titles: Readonly<Record<Standing, string>> = {
  seen: "Publications, the page itself read",
  quoted: "Publications, read on a page that quotes them",
  "worked out": "Worked out by hand from a formula that is published (a regression, no publication of its own)",
  "from memory": "From memory: the page was not seen",
  "common practice": "Common practice, no source",
  own: "Our own figures",
};

const nameOf = ({ publication, section }: Source): string => `${publication}: ${section}`;

function grouped<T>(list: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of list) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return groups;
}

const sum = (list: readonly Checked[]): number => list.reduce((n, { values }) => n + values, 0);
const plural = (n: number, word: string): string => `${n} ${word}${n === 1 ? "" : "s"}`;

/** A number as it is read, to two digits. */
const digits = (n: number): string => Number(n.toPrecision(2)).toString();
const DUST = 1e-12;

/** The figure that used most of what it was allowed: how far off it is, and what was allowed there. */
function howFarOff(list: readonly Checked[]): string {
  const figures = list.filter(({ figure }) => figure !== undefined);
  const used = ({ off, allowed }: Checked): number => off / allowed;
  const worst = figures.reduce<Checked | undefined>((a, b) => (a && used(a) >= used(b) ? a : b), undefined);
  if (worst?.figure === undefined) return list.some(({ allowed }) => allowed > 0) ? "within the range" : "the same";
  const { figure, off, allowed } = worst;
  if (off <= DUST * Math.abs(figure)) return "the same to the last digit";
  const share = (n: number): string => (figure === 0 ? digits(n) : `${digits((100 * n) / Math.abs(figure))} %`);
  return `worst ${share(off)} off at ${Number(figure.toPrecision(6))}, ${share(allowed)} allowed`;
}

/** Long quantities are cut that the figures stand under one another. */
const WIDTH = 78;
const cut = (text: string): string => (text.length > WIDTH ? `${text.slice(0, WIDTH - 1)}…` : text.padEnd(WIDTH));

function standingLines(standing: Standing, list: readonly Checked[]): readonly string[] {
  if (list.length === 0) return [];
  const bySource = [...grouped(list, ({ source }) => nameOf(source))].sort(([a], [b]) => (a < b ? -1 : 1));
  const lines = bySource.flatMap(([name, ofSource]) => [
    `  ${name}`,
    ...[...grouped(ofSource, ({ what }) => what)].map(
      ([what, of]) => `      ${cut(what)} ${plural(sum(of), "value").padStart(10)}  ${howFarOff(of)}`,
    ),
  ]);
  return ["", `${titles[standing]} (${plural(sum(list), "value")})`, ...lines];
}

function disagreementLines(list: Recorded["disagreements"]): readonly string[] {
  if (list.length === 0) return [];
  const lines = list.flatMap(({ what, said, ours }) => [
    `  ${what}`,
    ...said.map(({ source, value }) => `      ${value}  ${nameOf(source)} (${source.standing})`),
    `      here: ${ours}`,
  ]);
  return ["", `Where sources disagree (${list.length})`, ...lines];
}

/** The whole list of what was checked against what. */
export function printout({ checked, disagreements }: Recorded): string {
  const missing = notChecked.flatMap(({ figure, why }) => [`  ${figure}`, `      ${why}`]);
  return [
    "Sources of the reference tests",
    ...standings.flatMap((standing) =>
      standingLines(
        standing,
        checked.filter(({ source }) => source.standing === standing),
      ),
    ),
    ...disagreementLines(disagreements),
    "",
    `Known and not checked (${notChecked.length})`,
    ...missing,
    "",
    shortLine({ checked, disagreements }),
  ].join("\n");
}

/** The same in one line. */
export function shortLine({ checked, disagreements }: Recorded): string {
  const sources = new Set(checked.map(({ source }) => nameOf(source))).size;
  const outside = checked.filter(({ source }) => source.standing === "seen" || source.standing === "quoted");
  return `reference: ${sum(checked)} values against ${sources} sources, ${sum(outside)} of them published (seen or quoted), ${plural(disagreements.length, "disagreement")} shown`;
}
