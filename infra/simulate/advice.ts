import type { Reported } from "./reported.ts";
import { MOST_CREWS, type Resource } from "./resources.ts";
import { many, until, whole } from "./said.ts";

/** What breaks, by the number of crews at which it does, the least first. */
export function order({
  options,
  outcome,
}: Pick<Reported, "options" | "outcome">): readonly { readonly crews: number; readonly says: string }[] {
  const { shards, media, print } = options;
  const { crewsPerFullDatabase: room, months } = outcome;
  const of = (name: Resource["name"]): number => outcome.resources.find((one) => one.name === name)?.breaksAt ?? Number.POSITIVE_INFINITY;
  const list = [
    {
      crews: room * shards,
      says: `room: ${many(shards, "database")} of its size hold${shards === 1 ? "s" : ""} ${months} months of so many crews`,
    },
    { crews: of("time of a database"), says: `time: with ${many(shards, "database")} calls wait too long in the busiest hour` },
    { crews: of("media"), says: `media: with ${many(media, "container")} photos wait too long to be read` },
    { crews: of("print"), says: `print: with ${many(print, "container")} records wait too long to be printed` },
  ];
  return list.filter(({ crews }) => Number.isFinite(crews)).sort((a, b) => a.crews - b.crews);
}

/** What a person who reads this should do, in sentences. */
export function next({ options, outcome, platform }: Reported): readonly string[] {
  const { crews, crewsPerFullDatabase: room, months, daysUntilFull } = outcome;
  const { crewsPerCompany: each, workingDaysPerMonth } = platform.day;
  const timed =
    (outcome.resources.find(({ name }) => name === "time of a database")?.breaksAt ?? Number.POSITIVE_INFINITY) / options.shards;
  const enough = Math.max(1, Math.floor(Math.min(room, timed)));
  const needed = Math.ceil(crews / enough);
  const { kind, share } = outcome.largest;
  const machines = outcome.resources.filter(
    ({ name, breaksAt }) => name !== "time of a database" && breaksAt !== undefined && breaksAt <= crews,
  );
  const { listedDatabases } = platform.limits;
  return [
    `Add a database for every ${whole(enough)} crews (${whole(enough / each)} companies of ${each}): then its ${timed < room ? "time" : "room"} is used up. For ${whole(crews)} crews that is ${needed}.`,
    `One database has room for ${months} months of ${whole(room)} crews; with ${options.shards} the fullest is full after ${daysUntilFull.toFixed(1)} working days (${(daysUntilFull / workingDaysPerMonth).toFixed(1)} months).`,
    ...(needed > listedDatabases
      ? [`infra/shards/list.ts lists ${listedDatabases}: more have to be listed before they can be bound.`]
      : []),
    Number.isFinite(timed)
      ? `One database has time for ${whole(timed)} crews. ${(100 * share).toFixed(0)} % of it goes to ${kind}: without that request it would be enough for about ${whole(timed / (1 - share))}.`
      : `Their time needs no further database up to ${whole(MOST_CREWS)} crews; ${(100 * share).toFixed(0)} % of it goes to ${kind}.`,
    ...machines.map(({ name, use, breaksAt }) => {
      const have = name === "media" ? options.media : options.print;
      return `${name}: ${many(have, "container")} ${have === 1 ? "keeps" : "keep"} up with ${until(breaksAt)} crews; ${whole(crews)} need ${Math.max(have + 1, Math.ceil((have * use) / 0.8))}.`;
    }),
  ];
}
