import { countedAs, type JobCounts } from "../parts/counts.ts";
import { shapeOfCount } from "../parts/shapes.ts";
import { Sign } from "../parts/sign.tsx";
import { useSpeaking } from "../parts/speaking.ts";

interface CountsProps {
  readonly counts: JobCounts;
  /** How many records were issued, where it is known. */
  readonly records: number | undefined;
}

/** Plain counts of a job: findings by verdict, coverings, records. Nothing is worked out of them. */
export function CountsTable({ counts, records }: CountsProps) {
  const { say } = useSpeaking();
  const others = [
    ["counts-covered", counts.covered],
    ["counts-open", counts.open],
    ["counts-not-yet", counts.onNotYet],
    ["counts-on-word", counts.onWord],
    ["counts-unsaid", counts.unsaid],
    ["counts-doubted", counts.laterDoubted],
    ["counts-records", records ?? say("reading-first")],
  ] as const;
  return (
    <table class="counts">
      <thead>
        <tr>
          <th scope="col">{say("counts-verdict")}</th>
          <th scope="col" class="number">
            {say("counts-number")}
          </th>
        </tr>
      </thead>
      <tbody>
        {countedAs.map((as) => (
          <tr key={as}>
            <th scope="row">
              <Sign shape={shapeOfCount(as)} /> {say(`counted-${as}`)}
            </th>
            <td class="number">{counts.findings[as]}</td>
          </tr>
        ))}
      </tbody>
      <tbody>
        {others.map(([word, number]) => (
          <tr key={word}>
            <th scope="row">{say(word)}</th>
            <td class="number">{number}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
