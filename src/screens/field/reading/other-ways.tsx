import { isMeasurable } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { Section } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import type { Taking } from "../job-part.ts";
import { measurePath, noCovering, waysPath } from "../paths.ts";
import { alsoOpen, titleOfNext } from "./next-open.ts";

/** Below a thing that is asked: what is said instead of taking it, and what else its step leaves open, for whoever works in another order. */
export function OtherWays({ job, item, tag, told }: Taking) {
  const { say } = useSpeaking();
  const about = tag === undefined ? { item: item.id } : { item: item.id, tag };
  const also = alsoOpen(told, job, item, tag);
  const { sheet } = told.now.state;
  return (
    <>
      {sheet !== undefined && isMeasurable(sheet, item) && (
        <p>
          <Link to={measurePath(job, item.id, tag)}>{say("reading-measure")}</Link>
        </p>
      )}
      <p>
        <Link to={waysPath(job, noCovering, about)}>{say("other-ways")}</Link>
      </p>
      {also.length > 0 && (
        <Section title="also-open">
          <ul class="choices">
            {also.map((open) => (
              <li key={open.path}>
                <Link to={open.path}>{titleOfNext(open, told, say)}</Link>
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}
