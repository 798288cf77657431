import type { Finding } from "../job/index.ts";

/** What may settle a verdict that is too close to call. */
export type Settling = "second" | "third" | "tape" | "receiver" | "none";

/** More readings than this nobody takes: the work is done over, or the office is asked. */
const MOST_READINGS = 3;

/** What is new at each reading, and so goes down when more are taken. */
const byChance: ReadonlySet<string> = new Set(["resolution", "placing"]);

/**
 * What may settle it, from what brings the doubt: a second or third reading or a stiller edge where the placing does, a
 * finer tape where the resolution does, a reading on fine where the receiver does; nothing where no honest reading could
 * come near enough. Undefined where there is nothing to settle.
 */
export function settlingOf({ verdict, doubt, contributors = [], says }: Finding): Settling | undefined {
  const needed = says.figures.needed;
  if (verdict !== "too close to call" || typeof needed !== "number" || doubt === undefined) return undefined;
  const largest = contributors[0]?.name;
  const square = (names: (name: string) => boolean): number =>
    contributors.filter(({ name }) => names(name)).reduce((sum, { u }) => sum + u * u, 0);
  const allowed = (needed / 2) ** 2;
  const whole = (doubt / 2) ** 2;
  const chance = square((name) => byChance.has(name));
  const room = allowed - Math.max(0, whole - chance);
  const readings = room > 0 ? Math.ceil(chance / room) : Number.POSITIVE_INFINITY;
  if (largest === "resolution" && whole - square((name) => name === "resolution") <= allowed) return "tape";
  if (largest === "receiver" && whole - square((name) => name === "receiver") <= allowed) return "receiver";
  if (readings <= 2) return "second";
  return readings <= MOST_READINGS ? "third" : "none";
}
