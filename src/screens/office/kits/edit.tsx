import { useState } from "preact/hooks";
import type { FigureAsked, KitCard } from "../../../job/index.ts";
import type { VersionMade, WireProblem } from "../../../wire/index.ts";
import { tell } from "../../parts/edge.ts";
import { refusalText, useSpeaking } from "../../parts/speaking.ts";
import { TextField } from "../sheets/plain-fields.tsx";
import { cardShown, cardTyped } from "./card-typed.ts";
import { CardDifferences } from "./differences.tsx";
import { Fact } from "./fact.tsx";

type State =
  | { readonly is: "ready" | "saving" | "away" | "not saved" | "name used" }
  | { readonly is: "refused"; readonly problem: WireProblem }
  | { readonly is: "saved"; readonly before?: KitCard; readonly after: KitCard };

export interface CardTaken {
  readonly digest: string;
  readonly content: KitCard;
}

/** One kit card, its facts typed. Nothing that was typed goes when it is refused. */
export function EditCard({
  taken,
  figures,
  names,
  saved,
}: {
  readonly taken: CardTaken | undefined;
  readonly figures: readonly FigureAsked[];
  /** Cards that the company has. */
  readonly names: readonly string[];
  readonly saved: () => void;
}) {
  const { say, session } = useSpeaking();
  const [base, setBase] = useState(taken);
  const [typed, setTyped] = useState(() => cardShown(taken?.content, figures));
  const [state, setState] = useState<State>({ is: "ready" });
  // which facts stand first is settled when the page is opened, so that no field jumps away while it is typed
  const [given] = useState(() => new Set(Object.keys(taken?.content.facts ?? {})));
  const { card, faults } = cardTyped(typed, figures);
  const others = Object.keys(typed.facts).filter((key) => !figures.some(({ id }) => id === key));
  const all: readonly FigureAsked[] = [
    ...figures,
    ...others.map((id) => ({ id, title: { en: id }, kind: "text" as const, from: "kit card" as const })),
  ];
  const fact = (figure: FigureAsked) => {
    const own = typed.facts[figure.id];
    return (
      own && (
        <Fact
          key={figure.id}
          figure={figure}
          fact={own}
          fault={faults[figure.id]}
          change={(next) => setTyped({ ...typed, facts: { ...typed.facts, [figure.id]: next } })}
        />
      )
    );
  };
  const save = (event: SubmitEvent): void => {
    event.preventDefault();
    if (state.is === "saving") return;
    if (base === undefined && names.includes(card.id)) {
      setState({ is: "name used" });
      return;
    }
    if (Object.keys(faults).length > 0) {
      setState({ is: "not saved" });
      return;
    }
    setState({ is: "saving" });
    void tell<VersionMade>("/api/company/kit-cards", card, "POST", base?.digest).then((answer) => {
      if (answer.is !== "given") {
        setState(answer);
        return;
      }
      setState({ is: "saved", ...(base ? { before: base.content } : {}), after: card });
      setBase({ digest: answer.value.digest, content: card });
      saved();
    });
  };
  const text = (
    field: "id" | "part" | "notes" | "source",
    word: "kits-name" | "kits-part" | "kits-notes" | "kits-source",
    long = false,
  ) => <TextField label={say(word)} value={typed[field]} long={long} change={(next) => setTyped({ ...typed, [field]: next })} />;
  const isRefused = ["away", "not saved", "name used", "refused"].includes(state.is);
  return (
    <form class="issue opening kit-card" onSubmit={save}>
      {base === undefined && text("id", "kits-name")}
      {text("part", "kits-part")}
      {all.filter(({ id }) => given.has(id)).map(fact)}
      <details open={given.size === 0}>
        <summary class="target">{say("kits-more")}</summary>
        <div class="kit-more">{all.filter(({ id }) => !given.has(id)).map(fact)}</div>
      </details>
      {text("notes", "kits-notes", true)}
      {text("source", "kits-source")}
      <button type="submit" class="target main" aria-disabled={state.is === "saving"}>
        {say("kits-save")}
      </button>
      <div role="status" class={isRefused ? "answer refused" : "answer"}>
        {state.is === "saving" && <p>{say("sheets-saving")}</p>}
        {state.is === "away" && <p>{say("sheets-away")}</p>}
        {state.is === "name used" && <p>{say("kits-name-used")}</p>}
        {state.is === "not saved" && <p>{say("sheets-not-saved")}</p>}
        {state.is === "refused" && (
          <p>
            {say("sheets-not-saved")} {refusalText(state.problem, session)}
          </p>
        )}
        {state.is === "saved" && (
          <>
            <p>{say(state.before === undefined ? "kits-saved-first" : "kits-saved")}</p>
            {state.before !== undefined && <CardDifferences before={state.before} after={state.after} figures={figures} />}
          </>
        )}
      </div>
    </form>
  );
}
