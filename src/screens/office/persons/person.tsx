import { useState } from "preact/hooks";
import type { People, PersonFound } from "../../../wire/index.ts";
import { ask } from "../../parts/edge.ts";
import { Frame } from "../../parts/frame.tsx";
import { Link } from "../../parts/link.tsx";
import { useNews } from "../../parts/news.ts";
import { officePath } from "../../parts/place.ts";
import { dayInWords, momentHere, useSpeaking } from "../../parts/speaking.ts";
import { Data, Hold } from "./answering.tsx";
import { type About, Everywhere, HandedOut } from "./everywhere.tsx";
import { Removal } from "./removing.tsx";

/** One request: what names the person, the file to hand over, a hold, and the removal. */
export function PersonPage({ name: request }: { readonly name: string }) {
  const { say } = useSpeaking();
  const [whole, setWhole] = useState<readonly string[]>([]);
  const path = `/api/persons/${request}?whole=${whole.join(",")}`;
  const news = useNews(`person ${path}`, () => ask<PersonFound>(path));
  const found = news.value;
  return (
    <Frame title={found?.names[0] ?? say("persons-title")} news={news} inside={true}>
      {found !== undefined && (
        <>
          <Standing found={found} again={news.again} />
          {found.state !== "answered" && <Everywhere found={found} again={news.again} />}
          {found.state !== "answered" && <Data found={found} again={news.again} />}
          {found.state !== "answered" && found.asks === "removal" && (
            <>
              <Hold found={found} again={news.again} />
              <Removal found={found} again={news.again} whole={whole} choose={setWhole} />
            </>
          )}
          <HandedOut found={found} />
        </>
      )}
      <Link to={officePath("persons")}>{say("persons-back")}</Link>
    </Frame>
  );
}

function Standing({ found }: About) {
  const { say, session } = useSpeaking();
  const people = useNews("people", () => ask<People>("/api/people")).value?.people ?? [];
  const nameOf = (id: string): string => people.find(({ person }) => person === id)?.name ?? id;
  const { asks, day, held, answered } = found;
  const told = (at: number, by: string) => ({ time: momentHere(at, session.language), name: nameOf(by) });
  return (
    <>
      <p>{say(asks === "data" ? "persons-line-data" : "persons-line-removal", { day: dayInWords(day, session.language) })}</p>
      {held !== undefined && answered === undefined && (
        <p>{say(`persons-held-${held.because}`, { until: dayInWords(held.until, session.language), ...told(held.at, held.by) })}</p>
      )}
      {answered !== undefined && asks === "data" && <p>{say("persons-answered-data", told(answered.at, answered.by))}</p>}
      {answered !== undefined && asks === "removal" && (
        <p>
          {say("persons-answered-removal", {
            ...told(answered.at, answered.by),
            bodies: answered.bodies,
            files: answered.files,
            stays: answered.stays,
          })}
        </p>
      )}
    </>
  );
}
