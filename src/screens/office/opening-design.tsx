import type { RefObject } from "preact";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { DesignLine, KitCard, ToleranceSheet } from "../../job/index.ts";
import { makeDesignSayer } from "../../record/index.ts";
import type { CompanyView, DesignAnswer, PlannedDesign } from "../../wire/index.ts";
import { type Answer, tell } from "../parts/edge.ts";
import { refusalText, useSpeaking } from "../parts/speaking.ts";
import { versionContent } from "./opening-sheet.ts";
import { figuresAsked, filledIn, plannedTyped } from "./opening-typed.ts";

/** How long somebody is let type before the check is made again. */
const STILL_MS = 400;

interface Typing {
  readonly company: CompanyView;
  readonly sheet: ToleranceSheet | undefined;
  readonly form: RefObject<HTMLFormElement | null>;
}

/** The contents of kit cards by their digests, each read once. */
function useCards(): (digests: readonly string[]) => Promise<readonly KitCard[]> {
  const kept = useRef(new Map<string, Promise<KitCard | undefined>>());
  return useMemo(
    () => async (digests) => {
      const cards = digests.map((digest) => {
        const before = kept.current.get(digest) ?? versionContent<KitCard>(digest);
        kept.current.set(digest, before);
        return before;
      });
      return (await Promise.all(cards)).filter((card) => card !== undefined);
    },
    [],
  );
}

/** Kit cards and the numbers of the design, with the design check beside them as they are typed. */
export function DesignTyping({ company, sheet, form }: Typing) {
  const { say, session } = useSpeaking();
  const cardsOf = useCards();
  const [checked, setChecked] = useState<Answer<DesignAnswer>>();
  const words = (title: { readonly en: string; readonly es?: string }): string => title[session.language] ?? title.en;
  useEffect(() => {
    const typed = form.current;
    if (typed === null) return;
    let turn = 0;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const check = async (mine: number): Promise<void> => {
      const filled = filledIn(typed);
      const names = new Set(filled.all("kitCard"));
      const cards = await cardsOf(company.kitCards.filter(({ name }) => names.has(name)).map(({ digest }) => digest));
      const kitCards = cards.map(({ part, facts }) => ({ part, facts }) as NonNullable<PlannedDesign["kitCards"]>[number]);
      const answer = await tell<DesignAnswer>("/api/design", plannedTyped(filled, sheet, kitCards));
      // what was typed since is on its way already
      if (mine === turn) setChecked(answer);
    };
    const again = (event?: Event): void => {
      const name = (event?.target as HTMLInputElement | undefined)?.name ?? "figure-";
      if (!["figure-", "kitCard", "switch"].some((beginning) => name.startsWith(beginning))) return;
      turn += 1;
      const mine = turn;
      clearTimeout(timer);
      timer = setTimeout(() => void check(mine), STILL_MS);
    };
    typed.addEventListener("input", again);
    again();
    return () => {
      typed.removeEventListener("input", again);
      clearTimeout(timer);
      turn += 1;
    };
  }, [sheet, company, form, cardsOf]);
  if (sheet === undefined) return null;
  const figure = ({ id, title, unit }: ToleranceSheet["figures"][number]) => (
    <label key={id} class="typed">
      {unit === undefined || unit === "1" ? words(title) : say("opening-figure", { title: words(title), unit })}
      <input type="text" name={`figure-${id}`} maxLength={80} autoComplete="off" />
    </label>
  );
  return (
    <div class="design-typing">
      <fieldset>
        <legend>{say("opening-kit-cards")}</legend>
        {company.kitCards.length === 0 && <p>{say("opening-kit-cards-none")}</p>}
        {company.kitCards.map(({ name, part }) => (
          <label key={name} class="target">
            <input type="checkbox" name="kitCard" value={name} />
            <span>{part}</span>
          </label>
        ))}
      </fieldset>
      <fieldset>
        <legend>{say("opening-design")}</legend>
        <p>{say("opening-design-how")}</p>
        {sheet.switches.map(({ id, title, standard }) => (
          <label key={id} class="target">
            <input type="checkbox" name="switch" value={id} defaultChecked={standard} />
            <span>{words(title)}</span>
          </label>
        ))}
        <div class="figures-typed">{figuresAsked(sheet, "design").map(figure)}</div>
        <details>
          <summary class="target">{say("opening-figures-of-cards")}</summary>
          <div class="figures-typed">{figuresAsked(sheet, "kit card").map(figure)}</div>
        </details>
      </fieldset>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a part that scrolls has to be reached by keyboard */}
      <section class="design-beside" aria-live="polite" tabIndex={0} aria-labelledby="design-beside">
        <h2 id="design-beside">{say("design-check")}</h2>
        {checked === undefined && <p>{say("reading-first")}</p>}
        {checked?.is === "away" && <p>{say("away-first")}</p>}
        {checked?.is === "refused" && <p>{refusalText(checked.problem, session)}</p>}
        {checked?.is === "given" && <DesignLines lines={checked.value.lines as unknown as readonly DesignLine[]} />}
      </section>
    </div>
  );
}

function DesignLines({ lines }: { readonly lines: readonly DesignLine[] }) {
  const { session } = useSpeaking();
  const sayer = makeDesignSayer({ language: session.language, units: session.units });
  return (
    <dl>
      {lines.map((line) => (
        <div key={line.id}>
          <dt>
            {sayer.question(line.id)} <b>{sayer.state(line.state)}</b>
          </dt>
          {sayer.line(line).map((sentence) => (
            <dd key={sentence}>{sentence}</dd>
          ))}
          {line.refusal && (
            <dd>
              {refusalText(
                { type: "", title: "", status: 422, detail: "", ...line.refusal, figures: { ...line.refusal.figures } },
                session,
              )}
            </dd>
          )}
        </div>
      ))}
    </dl>
  );
}
