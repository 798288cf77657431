import { useState } from "preact/hooks";
import type { CompanyView, People, VersionList } from "../../../wire/index.ts";
import { ask } from "../../parts/edge.ts";
import { Frame } from "../../parts/frame.tsx";
import { Link } from "../../parts/link.tsx";
import { useNews } from "../../parts/news.ts";
import { officePath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { useSheet } from "../opening-sheet.ts";
import { wordsIn } from "../words-in.ts";
import { Differences } from "./changes.tsx";
import { EditSheet } from "./edit.tsx";
import { ReadSheet } from "./read.tsx";
import { Versions } from "./versions.tsx";

interface Known {
  readonly company: CompanyView;
  readonly people: People["people"];
  readonly lists: readonly VersionList[];
}

async function readKnown() {
  const [company, people] = await Promise.all([ask<CompanyView>("/api/company"), ask<People>("/api/people")]);
  if (company.is !== "given") return company;
  if (people.is !== "given") return people;
  const asked = company.value.sheets.map(({ name }) => ask<VersionList>(`/api/company/sheets/${encodeURIComponent(name)}`));
  const lists = (await Promise.all(asked)).flatMap((answer) => (answer.is === "given" ? [answer.value] : []));
  return { is: "given" as const, value: { company: company.value, people: people.value.people, lists } satisfies Known };
}

/** The company's tolerance sheets with their versions. */
export function Sheets() {
  const { say, session } = useSpeaking();
  const news = useNews("sheets", readKnown);
  const { company, people = [], lists = [] } = news.value ?? {};
  return (
    <Frame title={say("sheets-title")} news={news} inside={true}>
      <p>{say("sheets-how")}</p>
      {company?.sheets.length === 0 && <p>{say("sheets-none")}</p>}
      {company?.sheets.map(({ name, title, version }) => {
        const list = lists.find((one) => one.name === name);
        const own = wordsIn(title, session.language) || name;
        return (
          <section key={name} class="issued">
            <h2>
              {own}, {version}
            </h2>
            <p class="looking-keys">
              <Link to={officePath("sheets", name)}>{say("sheets-edit", { title: own })}</Link>
              <Link to={officePath("studied", name)}>{say("studied-open", { title: own })}</Link>
            </p>
            <h3>{say("sheets-versions")}</h3>
            {list !== undefined && (
              <Versions list={list} people={people} between={Differences} read={(digest) => officePath("sheets", digest)} />
            )}
          </section>
        );
      })}
    </Frame>
  );
}

/** One version of a tolerance sheet by its digest, to be read. */
function VersionPage({ digest }: { readonly digest: string }) {
  const { say, session } = useSpeaking();
  const taken = useSheet(digest);
  const title = taken === undefined ? say("sheets-title") : `${wordsIn(taken.content.title, session.language)}, ${taken.content.version}`;
  return (
    <Frame title={title} news={{ ...(taken === undefined ? {} : { readAt: Date.now() }) }} inside={true}>
      <p class="looking-keys">
        <Link to={officePath("sheets")}>{say("sheets-open")}</Link>
      </p>
      {taken !== undefined && <ReadSheet key={digest} taken={taken} />}
    </Frame>
  );
}

/** One tolerance sheet, to be changed, by its name; or one version of it, to be read, by its digest. */
export const SheetPage = ({ name }: { readonly name: string }) =>
  /^[0-9a-f]{64}$/.test(name) ? <VersionPage digest={name} /> : <NewestPage name={name} />;

function NewestPage({ name }: { readonly name: string }) {
  const { say, session } = useSpeaking();
  const news = useNews(`sheet ${name}`, () => ask<CompanyView>("/api/company"));
  const known = news.value?.sheets.find((one) => one.name === name);
  // the version that was read when the page was opened stays under the hand: a later reading changes no field
  const [first, setFirst] = useState<string>();
  if (first === undefined && known !== undefined) setFirst(known.digest);
  const taken = useSheet(first ?? "");
  const title = known === undefined ? say("sheets-title") : say("sheets-edit", { title: wordsIn(known.title, session.language) || name });
  return (
    <Frame title={title} news={news} inside={true}>
      <p class="looking-keys">
        <Link to={officePath("sheets")}>{say("sheets-open")}</Link>
      </p>
      {news.value !== undefined && known === undefined && <p>{say("no-such-page")}</p>}
      {taken !== undefined && <EditSheet key={first} taken={taken} saved={news.again} />}
    </Frame>
  );
}
