import { parseArgs } from "node:util";

export interface Options {
  readonly crews: number;
  /** Databases, the first one the directory as well. */
  readonly shards: number;
  /** Instances of the containers. */
  readonly media: number;
  readonly print: number;
  /** Simulated days, each drawn for itself; the first is a month's first. */
  readonly days: number;
  /** Crew-days that are driven through the edge. */
  readonly driven: number;
  readonly seed: number;
  readonly json?: string;
}

export const usage =
  "Say how many crews: npm run simulate -- --crews 5000 [--shards N] [--media N] [--print N] [--days N] [--driven CREW-DAYS] [--seed N] [--json FILE]";

/** Least and most of each number. */
const bounds = {
  crews: [1, 50_000],
  shards: [1, 100],
  media: [1, 1_000],
  print: [1, 1_000],
  days: [1, 31],
  driven: [1, 5_000],
  seed: [0, 1_000_000],
} as const;

/** The command's options, what is not said as `usual` has it; or what is wrong with them. */
export function optionsFrom(given: readonly string[], usual: Omit<Options, "json">): Options | string {
  const text = { type: "string" } as const;
  const names = Object.keys(bounds) as (keyof typeof bounds)[];
  try {
    const { values } = parseArgs({ args: [...given], options: { ...Object.fromEntries(names.map((name) => [name, text])), json: text } });
    const numbers: Record<string, number> = { ...usual };
    for (const name of names) {
      const said = (values as Record<string, string | undefined>)[name];
      if (said === undefined) continue;
      const number = /^\d{1,9}$/.test(said) ? Number(said) : Number.NaN;
      const [least, most] = bounds[name];
      if (!(number >= least && number <= most)) return `--${name} takes a whole number from ${least} to ${most}, and ${said} is none.`;
      numbers[name] = number;
    }
    const { json } = values as { json?: string };
    return { ...(numbers as unknown as Omit<Options, "json">), ...(json === undefined ? {} : { json }) };
  } catch (error) {
    return (error as Error).message;
  }
}
