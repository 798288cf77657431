import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { type Asking, type Question, type QuestionId, questions, usualAsking } from "#core/quality/index.ts";
import { isoDay, momentIn, typedDay } from "#core/units/index.ts";

export const questionNamed = (id: string | undefined): Outcome<Question> => {
  const found = questions.find((question) => question.id === (id as QuestionId));
  return found === undefined ? refuse("question-unknown", "question", {}) : ok(found);
};

/** What an address may ask of a question, and what each means. */
export const questionAsks = {
  from: "First day, YYYY-MM-DD",
  to: "Last day, YYYY-MM-DD",
  persons: "yes: compares persons too",
  lot: "Size of the lot that a sample is taken of",
  looked: "How many of the lot were looked at",
  off: "How many of those were not right",
  check: "Check or item whose limit is tried",
  lower: "Another lower limit, in the fixed unit of its kind",
  upper: "Another upper limit, in the fixed unit of its kind",
} as const;

/** The day that it is where the company is. */
export const todayIn = (now: number, zone: string): string => isoDay(momentIn(now, zone));

const whole = (text: string | null, least: number): number | undefined => {
  const value = text === null || text.trim() === "" ? Number.NaN : Number(text);
  return Number.isSafeInteger(value) && value >= least ? value : undefined;
};

/** What the address asks for: days, whether persons are compared, the figures of a sample, another limit. Refuses what is no day or number. */
export function askingOf(query: URLSearchParams, today: string): Outcome<Asking> {
  const days: { from?: string; to?: string } = {};
  for (const name of ["from", "to"] as const) {
    const day = query.get(name);
    if (day === null || day === "") continue;
    if (typedDay(day) === undefined) return refuse("request-shape", name, { found: day });
    days[name] = day;
  }
  const sample = sampleOf(query);
  if (!sample.ok) return sample;
  const limit = limitOf(query);
  if (!limit.ok) return limit;
  return ok({
    ...usualAsking(days.to !== undefined && days.to < today ? days.to : today),
    persons: query.get("persons") === "yes",
    ...days,
    ...(sample.value === undefined ? {} : { sample: sample.value }),
    ...(limit.value === undefined ? {} : { limit: limit.value }),
  });
}

function sampleOf(query: URLSearchParams): Outcome<Asking["sample"]> {
  if (!query.has("lot")) return ok(undefined);
  const [lot, looked, off] = [whole(query.get("lot"), 1), whole(query.get("looked"), 0), whole(query.get("off"), 0)];
  if (lot === undefined || lot > 100_000) return refuse("request-shape", "lot", { found: query.get("lot") ?? "" });
  if (looked === undefined || looked > lot) return refuse("request-shape", "looked", { found: query.get("looked") ?? "" });
  if (off === undefined || off > looked) return refuse("request-shape", "off", { found: query.get("off") ?? "" });
  return ok({ lot, looked, off });
}

function limitOf(query: URLSearchParams): Outcome<Asking["limit"]> {
  const check = query.get("check");
  if (check === null || check === "") return ok(undefined);
  const ends: { lower?: number; upper?: number } = {};
  for (const name of ["lower", "upper"] as const) {
    const given = query.get(name);
    if (given === null || given === "") continue;
    const end = whole(given, Number.MIN_SAFE_INTEGER);
    if (end === undefined) return refuse("request-shape", name, { found: given });
    ends[name] = end;
  }
  return ok({ check: check.slice(0, 80), ...ends });
}
