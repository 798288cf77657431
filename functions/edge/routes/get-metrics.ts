import { ok } from "#core/outcome/index.ts";
import { waitingWork } from "../adapters/waiting-work.ts";
import { counters } from "../counters.ts";
import { readiness } from "../readiness.ts";
import { databasesOf } from "../shards/index.ts";
import { operator, route } from "./route.ts";

const quoted = (labels: Readonly<Record<string, string>>): string =>
  Object.entries(labels)
    .map(([name, value]) => `${name}="${value}"`)
    .join(",");

/** A family in the text form of OpenMetrics 1.0, whose readers every operator has. */
function family(name: string, type: "counter" | "gauge", help: string, rows: readonly (readonly [Record<string, string>, number])[]) {
  const sample = type === "counter" ? `${name}_total` : name;
  return [
    `# TYPE ${name} ${type}`,
    `# HELP ${name} ${help}`,
    ...rows.map(([labels, value]) => `${sample}${Object.keys(labels).length > 0 ? `{${quoted(labels)}}` : ""} ${value}`),
  ];
}

export const getMetrics = route({
  method: "GET",
  path: "/api/metrics",
  says: "Numbers for who runs the installation, in the text form of OpenMetrics: answers of this instance, work that waits, parts that answer",
  who: operator,
  gives: { 200: "metrics" },
  async run({ services, now }) {
    const counted = counters.rows();
    const [waiting, { parts }] = await Promise.all([waitingWork(databasesOf(services.environment), now), readiness(services)]);
    const label = ({ route, hundreds }: (typeof counted)[number]) => ({ route, status: `${hundreds}xx` });
    const text = [
      ...family(
        "edge_answers",
        "counter",
        "Answers of this instance since it began.",
        counted.map((row) => [label(row), row.answers]),
      ),
      ...family(
        "edge_answer_seconds",
        "counter",
        "Time that they took together.",
        counted.map((row) => [label(row), row.milliseconds / 1000]),
      ),
      ...family(
        "owed_rows",
        "gauge",
        "Work on photos that waits.",
        waiting.map(({ kind, rows }) => [{ kind }, rows]),
      ),
      ...family(
        "owed_most_tries",
        "gauge",
        "Tries of the row that was tried most often.",
        waiting.map(({ kind, mostTries }) => [{ kind }, mostTries]),
      ),
      ...family(
        "owed_late_seconds",
        "gauge",
        "How long the row that is due longest has been due.",
        waiting.map(({ kind, lateBy }) => [{ kind }, lateBy / 1000]),
      ),
      ...family(
        "part_up",
        "gauge",
        "1 where the part answers.",
        Object.entries(parts).map(([part, { up }]) => [{ part }, up ? 1 : 0]),
      ),
      "# EOF",
      "",
    ].join("\n");
    return ok(new Response(text, { headers: { "content-type": "application/openmetrics-text; version=1.0.0; charset=utf-8" } }));
  },
});
