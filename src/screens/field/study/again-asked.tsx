import { useEffect, useState } from "preact/hooks";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { counted } from "../../parts/words/index.ts";
import { useKeep } from "../keep/index.ts";
import { againPath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";
import { againDue, isLeft } from "./again-due.ts";

interface AgainAskedProps {
  readonly job: string;
  readonly told: ToldOnPhone;
  /** Of one covering; without it of the next one that is asked for. */
  readonly covering?: string;
}

/** Asks for a second pair of eyes once a chosen covering's readings are in, where another person is there to have them. */
export function AgainAsked({ job, told, covering }: AgainAskedProps) {
  const { say } = useSpeaking();
  const { keep, state } = useKeep();
  const [asked, setAsked] = useState(false);
  const due = againDue(job, told, keep.now(), covering).filter(({ notBy }) => state.people.some(({ person }) => person !== notBy));
  const of = due[0]?.covering;
  useEffect(() => {
    if (of !== undefined) void isLeft(keep, job, of).then((left) => setAsked(!left));
  }, [keep, job, of]);
  if (of === undefined || !asked) return null;
  return (
    <section class="study-choose" aria-label={say("again-title")}>
      <h2>{say("again-title")}</h2>
      <p>{say("again-why")}</p>
      <Link to={againPath(job, of)} class="target">
        {counted(say, "again-open", due.filter((one) => one.covering === of).length)}
      </Link>
    </section>
  );
}
