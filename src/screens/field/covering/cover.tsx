import { lazy, Suspense } from "preact/compat";
import { useState } from "preact/hooks";
import { RULES } from "../../../job/index.ts";
import { coveredWord } from "../../parts/covered-word.ts";
import { jobPath } from "../../parts/place.ts";
import { NotJudged } from "../../parts/section.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { NotHere, PhoneFrame } from "../frame.tsx";
import type { JobPart } from "../job-part.ts";
import { useTold } from "../told.ts";
import { useEnter } from "../use-enter.ts";
import { Announce } from "./announce.tsx";
import { Differing } from "./differing.tsx";
import { HeldLines } from "./held.tsx";
import { Hold } from "./hold.tsx";
import { LargeClearance } from "./large.tsx";

const AgainAsked = lazy(() => import("../study/index.tsx").then(({ againAsked }) => againAsked()));

/** One covering: its clearance, all that holds it, when it will happen, and the act itself, pressed and held. */
export function CoverPage({ job, rest: [id = ""] }: JobPart) {
  const { say, go } = useSpeaking();
  const told = useTold(job);
  const enter = useEnter(job);
  const [refused, setRefused] = useState("");
  const clearance = told?.now.clearances.find(({ covering }) => covering === id);
  if (told === undefined || clearance === undefined) return <NotHere />;
  const { now, sayer, book } = told;
  const { sheet, sheetDigest } = now.state;
  const covering = sheet?.coverings.find((one) => one.id === id);
  const act = sayer.words(covering?.title) || id;
  const cautions = (covering?.cautions ?? []).map((caution) => sayer.words(sheet?.cautions.find((one) => one.id === caution)?.text));

  const cover = async (): Promise<void> => {
    const digests = new Map(now.state.facts.map(({ entry }) => [entry.id, entry.digest]));
    const rested = new Set(now.findings.filter(({ holds }) => holds === id).flatMap(({ entries }) => entries));
    const entered = await enter("covered", {
      what: {
        covering: id,
        shown: clearance.state,
        lines: clearance.lines.map((line) => sayer.line(line)),
        sheet: sheetDigest ?? "",
        rules: RULES,
        restedOn: [...rested].map((entry) => ({ id: entry, digest: digests.get(entry) ?? "" })),
      },
    });
    if (entered?.is === "kept") go(jobPath(job));
    if (entered?.is === "no room") setRefused(say("unsent-full"));
    if (entered?.is === "refused") setRefused(sayer.refusal(entered.refusal));
  };

  return (
    <PhoneFrame title={act} back={{ to: jobPath(job), title: now.view.title }}>
      <NotJudged />
      <LargeClearance clearance={clearance} sayer={sayer} unseen={book.unseen.length} />
      {clearance.covered === undefined && (
        <>
          <HeldLines clearance={clearance} all={true} job={job} now={now} sayer={sayer} />
          <Differing job={job} told={told} covering={id} />
          <Suspense fallback={null}>
            <AgainAsked job={job} told={told} covering={id} />
          </Suspense>
          {cautions.length > 0 && (
            <div class="cautions">
              <h2>{say("before-covering")}</h2>
              {cautions.map((caution) => (
                <p key={caution}>{caution}</p>
              ))}
            </div>
          )}
          <Announce job={job} covering={id} />
          <p role="alert">{refused}</p>
          <p>{say(clearance.state === "not yet" ? "cover-against" : "cover-how")}</p>
          <div class="shutter-row alone">
            <Hold onHeld={() => void cover()} title={say("cover-hold", { act })} />
          </div>
        </>
      )}
      {clearance.covered !== undefined && <p>{say(coveredWord(clearance.covered), { time: sayer.moment(clearance.covered.at) })}.</p>}
    </PhoneFrame>
  );
}
