import { useEffect, useState } from "preact/hooks";
import { awayFromSite, factsOf } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { picturesOf } from "../../parts/pictures.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import type { ToldOnPhone } from "../told.ts";
import { dayHere } from "../use-enter.ts";
import { AskPosition, usePosition } from "./position.tsx";
import { distanceText, type Position, whereOf } from "./where.ts";

interface RightJobProps {
  readonly job: string;
  readonly told: ToldOnPhone;
}

/** The site's street, as the office wrote it when it opened the job. */
function addressOf({ now }: ToldOnPhone): string | undefined {
  const who = factsOf(now.state, "job-opened")[0]?.entry.who;
  const address = typeof who === "object" && who !== null && "address" in who ? who.address : undefined;
  return typeof address === "string" ? address : undefined;
}

/** How far the phone is from the site; nothing where either has no place. */
function Away({ told, position }: { readonly told: ToldOnPhone; readonly position: Position | undefined }) {
  const { say, session } = useSpeaking();
  const away = position && awayFromSite(told.now.state, whereOf(position, position.timestamp));
  if (away === undefined) return null;
  const text = (micrometres: number): string => distanceText(micrometres, session.units, session.language);
  const figures = { distance: text(away.distance), doubt: text(away.doubt) };
  const far = away.distance - away.doubt > away.reaches;
  const at = away.distance + away.doubt <= away.reaches;
  return (
    <p role="status" class={far ? "too-poor" : "stands-out"}>
      {say(far ? "right-job-far" : at ? "right-job-at" : "right-job-unsure", figures)}
    </p>
  );
}

/** The first picture of the site that the office has, as it looked when the crew came. */
function SitePicture({ told }: { readonly told: ToldOnPhone }) {
  const [missing, setMissing] = useState(false);
  const first = picturesOf(told.now, told.sayer).find(({ unseen }) => unseen === undefined);
  if (first === undefined || missing) return null;
  return <img class="mount" src={first.address} alt={first.title} onError={() => setMissing(true)} />;
}

function Asked({ told, onYes }: { readonly told: ToldOnPhone; readonly onYes: () => void }) {
  const { say } = useSpeaking();
  const today = usePosition();
  const { title, ownNumber } = told.now.view;
  const address = addressOf(told);
  return (
    <section class="right-job" aria-label={say("right-job")}>
      <h2>{say("right-job")}</h2>
      <p class="right-job-name">{title}</p>
      {ownNumber !== undefined && <p>{ownNumber}</p>}
      {address !== undefined && <p>{address}</p>}
      <Away told={told} position={today.position} />
      <SitePicture told={told} />
      <AskPosition today={today} why="right-job-why" />
      <button type="button" class="target main" onClick={onYes}>
        {say("right-job-yes")}
      </button>
      <Link to="/">{say("right-job-no")}</Link>
    </section>
  );
}

/** Once a day for each job, before anything is entered: which job this is, where it is, and how far from here. */
export function RightJob({ job, told }: RightJobProps) {
  const { keep } = useKeep();
  const [said, setSaid] = useState(true);
  const place = `right-job ${job}`;
  useEffect(() => {
    void keep.draft<string>(place).then((day) => setSaid(day === dayHere(Date.now())));
  }, [keep, place]);
  if (said) return null;
  const yes = (): void => {
    setSaid(true);
    void keep.keepDraft(place, dayHere(Date.now()));
  };
  return <Asked told={told} onYes={yes} />;
}
