import { makeWarrantySayer } from "../../../record/index.ts";
import { type Cover, standingOn } from "../../../warranty/index.ts";
import { JobPage, type JobTold } from "../../parts/job-page.tsx";
import { Link } from "../../parts/link.tsx";
import { jobPath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { receiverOf } from "../message/addressee.ts";
import { MakeMessage } from "../message/index.tsx";
import { useWarranted, type Warranted } from "./warranted.ts";
import { WarrantyEntered } from "./warranty-entered.tsx";

/** The covers of one job, what they rest on, and what is entered about them over the years. */
export const WarrantyPage = ({ job }: { readonly job: string }) => (
  <JobPage job={job}>{(told) => <WarrantyParts job={job} told={told} />}</JobPage>
);

function WarrantyParts({ job, told }: { readonly job: string; readonly told: JobTold }) {
  const { say } = useSpeaking();
  const warranted = useWarranted(told.now);
  return (
    <section class="after-work">
      <h2>{say("warranty-title")}</h2>
      {warranted === undefined ? <p>{say("after-terms-waiting")}</p> : <Covers job={job} warranted={warranted} told={told} />}
      <Link to={jobPath(job)}>{say("looking-to-job")}</Link>
    </section>
  );
}

function CoverRow({ cover, warranted: { today } }: { readonly cover: Cover; readonly warranted: Warranted }) {
  const { session } = useSpeaking();
  const sayer = makeWarrantySayer(session.language);
  const isKept = cover.kept !== undefined;
  return (
    <tr>
      <th scope="row">{cover.part}</th>
      <td>{sayer.standing(standingOn(cover, today).is)}</td>
      <td>{isKept ? "" : `${sayer.lasts(cover.months)}, ${sayer.starts(cover)}`}</td>
      <td>{isKept ? "" : sayer.ends(cover)}</td>
      <td>
        {[...(cover.conditions === undefined ? [] : [cover.conditions]), ...sayer.conditions(cover, today)].map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </td>
    </tr>
  );
}

const heads = ["warranty-part", "warranty-stands", "warranty-term", "warranty-ends", "warranty-rests"] as const;

function Covers({ job, warranted, told }: { readonly job: string; readonly warranted: Warranted; readonly told: JobTold }) {
  const { say, session } = useSpeaking();
  const { covers, over, today, terms } = warranted;
  const sayer = makeWarrantySayer(session.language);
  return (
    <>
      <p>
        {sayer.handed(over, today)}. <Link to={jobPath(job, "handed-over")}>{say("handed-title")}</Link>
      </p>
      {covers.length === 0 ? (
        <p>{say("warranty-no-terms")}</p>
      ) : (
        <table class="counts">
          <thead>
            <tr>
              {heads.map((head) => (
                <th key={head} scope="col">
                  {say(head)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {covers.map((cover) => (
              <CoverRow key={cover.part} cover={cover} warranted={warranted} />
            ))}
          </tbody>
        </table>
      )}
      <p>{say("after-lawyer")}</p>
      <p>
        <a class="target" href={`/api/jobs/${job}/calendar`} download="calendar.ics">
          {say("warranty-calendar")}
        </a>
      </p>
      <MakeMessage job={job} kind="warranty" to={receiverOf(told.now.state)} language={warranted.clocks.language} />
      <WarrantyEntered job={job} parts={terms.terms.map((term) => term.part)} />
    </>
  );
}
