import type { ComponentChildren } from "preact";
import { useMemo } from "preact/hooks";
import type { Sayer } from "../../record/index.ts";
import { Frame } from "./frame.tsx";
import { type JobNow, readJob, sayerOf } from "./job-now.ts";
import { useNews } from "./news.ts";
import { type PictureShown, picturesOf } from "./pictures.ts";
import { useSpeaking } from "./speaking.ts";

export interface JobTold {
  readonly now: JobNow;
  readonly sayer: Sayer;
  readonly pictures: readonly PictureShown[];
  /** Reads the job again at once: something was entered here. */
  readonly again: () => void;
}

interface JobPageProps {
  readonly job: string;
  readonly children: (told: JobTold) => ComponentChildren;
}

/** One job: reads it, keeps it fresh, and puts what each role looks at into the frame. */
export function JobPage({ job, children }: JobPageProps) {
  const { say, session } = useSpeaking();
  const news = useNews(`job ${job}`, (before: JobNow | undefined) => readJob(job, before, session.role !== "crew"));
  const { value: now, again } = news;
  const told = useMemo(() => {
    if (now === undefined) return undefined;
    const sayer = sayerOf(now, session.language, session.units, say("someone"));
    return { now, sayer, pictures: picturesOf(now, sayer), again };
  }, [again, now, session.language, session.units, say]);
  if (told === undefined) return <Frame title={say("job")} news={news} inside={true} />;
  const { view, state } = told.now;
  const sheet = state.sheet === undefined ? say("sheet-none") : `${told.sayer.words(state.sheet.title)}, ${state.sheet.version}`;
  const cells = [
    ...(view.ownNumber === undefined ? [] : [{ label: say("own-number"), text: view.ownNumber }]),
    { label: say("entries"), text: String(view.entries) },
    { label: say("tolerance-sheet"), text: sheet },
    { label: say("site-zone"), text: state.opened?.zone ?? "UTC" },
  ];
  return (
    <Frame title={view.title} cells={cells} news={news} inside={true}>
      {children(told)}
    </Frame>
  );
}
