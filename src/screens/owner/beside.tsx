import { readOwnFacts } from "../office/own-facts.ts";
import { wordsIn } from "../office/words-in.ts";
import { Link } from "../parts/link.tsx";
import { useNews } from "../parts/news.ts";
import { officePath } from "../parts/place.ts";
import { useSpeaking } from "../parts/speaking.ts";
import { Entered, type OwnKind } from "./own-facts.tsx";
import { TaughtForm } from "./taught.tsx";

/** Questions that go by what the company keeps about itself, and its kind. */
const kinds: Readonly<Record<string, OwnKind>> = { taught: "taught", "tape-study": "tape-studied", instruments: "instrument-checked" };

export const goesByOwnFacts = (question: string): boolean => Object.hasOwn(kinds, question);

/** Beside such a question: what was entered, the way to enter more where this is the page for it, and where it leads. */
export function Beside({ question, changed }: { readonly question: string; readonly changed: () => void }) {
  const { say, session } = useSpeaking();
  const news = useNews("own facts", readOwnFacts);
  const kind = kinds[question];
  const known = news.value;
  if (known === undefined || kind === undefined) return null;
  const both = (): void => {
    news.again();
    changed();
  };
  return (
    <>
      {kind === "taught" && <TaughtForm known={known} entered={both} />}
      {kind === "tape-studied" && (
        <section class="own-facts">
          <h2>{say("studied-sheets")}</h2>
          <p>{say("studied-sheets-how")}</p>
          <ul>
            {known.sheets.map(({ id, title }) => (
              <li key={id}>
                <Link to={officePath("studied", id)}>{say("studied-open", { title: wordsIn(title, session.language) || id })}</Link>
              </li>
            ))}
          </ul>
        </section>
      )}
      <Entered kind={kind} known={known} changed={both} />
    </>
  );
}
