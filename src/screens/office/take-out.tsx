import { Section } from "../parts/section.tsx";
import { useSpeaking } from "../parts/speaking.ts";

const tables = ["jobs", "readings", "findings"] as const;

/** Everything can be taken out: tables over all jobs or of one, and one job whole as an archive. */
export function TakeOut({ job }: { readonly job?: string }) {
  const { say } = useSpeaking();
  const of = job === undefined ? "" : `?job=${job}`;
  return (
    <Section title="exports-title">
      <p>{say("exports-how")}</p>
      <p class="looking-keys">
        {tables.map((table) => (
          <a key={table} class="target" href={`/api/tables/${table}${of}`} download={`${table}.csv`}>
            {say(`export-${table}`)}
          </a>
        ))}
        {job !== undefined && (
          <>
            <a class="target" href={`/api/jobs/${job}/archive`} download={`${job}.zip`}>
              {say("archive-out")}
            </a>
            <a class="target" href={`/api/jobs/${job}/archive?photos=none`} download={`${job}.zip`}>
              {say("archive-out-without")}
            </a>
          </>
        )}
      </p>
    </Section>
  );
}
