/** What happened, in words of the program's own; nothing of these comes from a sender. */
export type Happened = "answered" | "broke" | "queue-broke" | "sweep-broke" | "afterwards-broke" | "notice-broke";

/**
 * One line of the log. Its fields are closed: numbers, names of the program's own, an id made for the request. What a person
 * sent, a token, a position or a name has no field to stand in; the route is the pattern and never the address, which may hold a token.
 */
export interface LogLine {
  readonly event: Happened;
  readonly request?: string;
  readonly route?: string;
  readonly status?: number;
  /** A refusal's code. */
  readonly code?: string;
  readonly role?: string;
  readonly milliseconds?: number;
  readonly queue?: string;
  readonly thrown?: Thrown;
}

export interface Thrown {
  readonly name: string;
  /** Where, innermost first, at most eight; no message, which may repeat what was sent. */
  readonly at: readonly string[];
  /** The database's own words where they hold nothing but names of tables and columns. */
  readonly database?: string;
}

const FRAME = /^\s*at (?:(?<name>[\w.$<>[\] ]+) \()?.*?(?<place>[\w.-]+:\d+:\d+)\)?$/;
const DATABASE = /^D1_[A-Z_]+: [A-Za-z_ .,:]+/;

export function thrownOf(thrown: unknown): Thrown {
  if (!(thrown instanceof Error)) return { name: typeof thrown, at: [] };
  const at = (thrown.stack ?? "")
    .split("\n")
    .map((line) => FRAME.exec(line)?.groups)
    .flatMap((found) => (found ? [[found.name, found.place].filter((part) => part !== undefined).join(" ")] : []))
    .slice(0, 8);
  const database = DATABASE.exec(thrown.message)?.[0];
  return { name: thrown.name, at, ...(database ? { database } : {}) };
}

/** One line of JSON to whoever reads the log. */
export const log = (line: LogLine): void => console.log(JSON.stringify(line));
