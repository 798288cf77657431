import { makeWarrantySayer, typedDay } from "../../../record/index.ts";
import type { WarrantyRegister } from "../../../wire/index.ts";
import { ask } from "../../parts/edge.ts";
import { Frame } from "../../parts/frame.tsx";
import { Link } from "../../parts/link.tsx";
import { useNews } from "../../parts/news.ts";
import { jobPath, officePath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { OldPaper } from "./old-paper.tsx";
import { OldTable } from "./old-table.tsx";

type Line = WarrantyRegister["covers"][number];

/** Every cover of the company: soonest to run out first, and what is to be registered by when. */
export function RegisterPage() {
  const { say } = useSpeaking();
  const news = useNews("warranties", () => ask<WarrantyRegister>("/api/warranties"));
  const covers = news.value?.covers ?? [];
  const register = covers
    .filter((line) => line.register?.is === "to do" || line.register?.is === "late")
    .sort((a, b) => (a.register?.by ?? "").localeCompare(b.register?.by ?? ""));
  return (
    <Frame title={say("register-title")} news={news} inside={true}>
      <section class="after-work">
        <p>{say("after-lawyer")}</p>
        <Link to={officePath("terms")}>{say("terms-title")}</Link>
        {news.value?.terms === 0 && <p>{say("warranty-no-terms")}</p>}
        <h2>{say("register-to-register")}</h2>
        {register.length === 0 ? <p>{say("register-none")}</p> : <ToRegister lines={register} />}
        <h2>{say("register-covers")}</h2>
        <p>{say("register-order")}</p>
        {covers.length > 0 && <Covers lines={covers} again={news.again} />}
        <h2>{say("register-old")}</h2>
        <OldTable done={news.again} />
      </section>
    </Frame>
  );
}

const useDay = (): ((iso: string | undefined) => string) => {
  const { session } = useSpeaking();
  const { day } = makeWarrantySayer(session.language);
  return (iso) => {
    const read = iso === undefined ? undefined : typedDay(iso);
    return read === undefined ? "" : day(read);
  };
};

const Where = ({ line }: { readonly line: Line }) =>
  line.job === undefined ? <span>{line.title}</span> : <Link to={jobPath(line.job, "warranty")}>{line.title}</Link>;

function ToRegister({ lines }: { readonly lines: readonly Line[] }) {
  const { say, session } = useSpeaking();
  const sayer = makeWarrantySayer(session.language);
  const day = useDay();
  return (
    <ul class="shown">
      {lines.map((line) => (
        <li key={`${line.job} ${line.part}`}>
          {line.part}:{" "}
          {sayer.text(line.register?.is === "late" ? "register-late" : "register-to do", {
            whom: line.register?.with ?? "",
            by: day(line.register?.by),
          })}
          . <Where line={line} /> <span class="own-number">{line.ownNumber ?? say("register-no-number")}</span>
        </li>
      ))}
    </ul>
  );
}

const heads = ["warranty-part", "register-where", "warranty-stands", "warranty-ends", "warranty-rests"] as const;

function Covers({ lines, again }: { readonly lines: readonly Line[]; readonly again: () => void }) {
  const { say, session } = useSpeaking();
  const sayer = makeWarrantySayer(session.language);
  const day = useDay();
  return (
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
        {lines.map((line) => (
          <tr key={`${line.job ?? line.ownNumber} ${line.part}`}>
            <th scope="row">{line.part}</th>
            <td>
              <Where line={line} /> {line.ownNumber}
            </td>
            <td>{sayer.standing(line.is)}</td>
            <td>{line.end === undefined ? "" : say("register-last-day", { day: day(line.end) })}</td>
            <td>
              {line.missed > 0 && <p>{say("register-missed", { count: line.missed })}</p>}
              {line.next && (
                <p>
                  {sayer.text("service-is-next", {
                    service: sayer.serviceName(line.next.kind),
                    due: day(line.next.due),
                    until: day(line.next.until),
                  })}
                </p>
              )}
              {line.old && <OldPaper old={line.old} again={again} />}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
