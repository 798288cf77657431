import { useMemo, useState } from "preact/hooks";
import type { KitCard, ToleranceSheet } from "../../../job/index.ts";
import type { CompanyView, People, VersionList } from "../../../wire/index.ts";
import { ask } from "../../parts/edge.ts";
import { Frame } from "../../parts/frame.tsx";
import { Link } from "../../parts/link.tsx";
import { useNews } from "../../parts/news.ts";
import { officePath } from "../../parts/place.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { versionContent } from "../opening-sheet.ts";
import { Versions } from "../sheets/versions.tsx";
import { cardFigures } from "./card-typed.ts";
import { CardDifferences } from "./differences.tsx";
import { type CardTaken, EditCard } from "./edit.tsx";

/** The page of a card that is not there yet. */
const NEW = "new";

/** What both pages read: the company's things, and the figures that its sheets ask of kit cards. */
async function readKnown() {
  const company = await ask<CompanyView>("/api/company");
  if (company.is !== "given") return company;
  const sheets = await Promise.all(company.value.sheets.map(({ digest }) => versionContent<ToleranceSheet>(digest)));
  return { is: "given" as const, value: { company: company.value, figures: cardFigures(sheets.filter((sheet) => sheet !== undefined)) } };
}

async function readLists() {
  const [known, people] = await Promise.all([readKnown(), ask<People>("/api/people")]);
  if (known.is !== "given") return known;
  if (people.is !== "given") return people;
  const asked = known.value.company.kitCards.map(({ name }) => ask<VersionList>(`/api/company/kit-cards/${encodeURIComponent(name)}`));
  const lists = (await Promise.all(asked)).flatMap((answer) => (answer.is === "given" ? [answer.value] : []));
  return { is: "given" as const, value: { ...known.value, people: people.value.people, lists } };
}

/** The company's kit cards with their versions. */
export function Kits() {
  const { say } = useSpeaking();
  const news = useNews("kits", readLists);
  const { company, people = [], lists = [], figures } = news.value ?? {};
  const between = useMemo(
    () => (of: { readonly before: KitCard; readonly after: KitCard }) => <CardDifferences {...of} figures={figures ?? []} />,
    [figures],
  );
  return (
    <Frame title={say("kits-title")} news={news} inside={true}>
      <p>{say("kits-how")}</p>
      <p class="looking-keys">
        <Link to={officePath("kits", NEW)}>{say("kits-new")}</Link>
      </p>
      {company?.kitCards.length === 0 && <p>{say("kits-none")}</p>}
      {company?.kitCards.map(({ name, part }) => {
        const list = lists.find((one) => one.name === name);
        return (
          <section key={name} class="issued">
            <h2>{part}</h2>
            <p class="looking-keys">
              <Link to={officePath("kits", name)}>{say("kits-edit", { title: part })}</Link>
            </p>
            <h3>{say("sheets-versions")}</h3>
            {list !== undefined && <Versions list={list} people={people} between={between} />}
          </section>
        );
      })}
    </Frame>
  );
}

/** One kit card, to be changed, or a new one. */
export function KitPage({ name }: { readonly name: string }) {
  const { say } = useSpeaking();
  const news = useNews(`kit card ${name}`, readKnown);
  const known = news.value?.company.kitCards.find((one) => one.name === name);
  const [taken, setTaken] = useState<CardTaken | "asked">();
  if (taken === undefined && known !== undefined) {
    setTaken("asked");
    void versionContent<KitCard>(known.digest).then((content) => setTaken(content && { digest: known.digest, content }));
  }
  const isNew = name === NEW && known === undefined;
  const title = isNew ? say("kits-new") : known === undefined ? say("kits-title") : say("kits-edit", { title: known.part });
  const card = taken === "asked" ? undefined : taken;
  return (
    <Frame title={title} news={news} inside={true}>
      <p class="looking-keys">
        <Link to={officePath("kits")}>{say("kits-open")}</Link>
      </p>
      {news.value !== undefined && known === undefined && !isNew && <p>{say("no-such-page")}</p>}
      {news.value !== undefined && (isNew || card !== undefined) && (
        <EditCard taken={card} figures={news.value.figures} names={news.value.company.kitCards.map((one) => one.name)} saved={news.again} />
      )}
    </Frame>
  );
}
