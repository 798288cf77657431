import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { useKeep } from "../keep/index.ts";
import { burstPath, movePath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";
import type { CardLine, Elsewhere } from "./where-to.ts";

/** What a card names, in words. */
export interface Named {
  /** Only where it is another job than this one. */
  readonly job?: string;
  readonly step?: string;
}

/** Names jobs and steps by the tolerance sheets that the jobs themselves have. */
export function useNamed(job: string, { sayer }: ToldOnPhone): (card: Elsewhere) => Named {
  const { state } = useKeep();
  return ({ job: of, step: id }) => {
    const book = state.books.find(({ kept }) => kept.job === of);
    const step = id === undefined ? undefined : sayer.words(book?.state.sheet?.steps.find((one) => one.id === id)?.title);
    return { ...(of === job ? {} : { job: book?.kept.title ?? "" }), ...(step === undefined ? {} : { step }) };
  };
}

/** One quiet line of a card that asks nothing. */
export function CardSaysLine({ line }: { readonly line: CardLine }) {
  const { say } = useSpeaking();
  const words = {
    step: "card-says-step",
    job: "card-says-job",
    "job not here": "card-says-job-not-here",
    nothing: "card-says-nothing",
  } as const;
  return (
    <p role="status" class="card-says">
      {say(words[line])}
    </p>
  );
}

interface CardAsksProps {
  readonly job: string;
  readonly told: ToldOnPhone;
  readonly several: boolean;
  readonly elsewhere: readonly Elsewhere[];
  readonly onGo: (to: Elsewhere) => void;
  readonly onHere: () => void;
}

/** A card that says another place than this one: a person decides, and nothing was moved meanwhile. */
export function CardAsks({ job, told, several, elsewhere, onGo, onHere }: CardAsksProps) {
  const { say } = useSpeaking();
  const named = useNamed(job, told);
  const [only, ...others] = elsewhere;
  const title = ({ job: of, step }: Named): string => [of, step].filter((part) => part !== undefined).join(", ");
  const asked = ({ job: of = "", step }: Named): string => {
    if (of === "") return say("card-asks-step", { step: step ?? "" });
    return step === undefined ? say("card-asks-job", { job: of }) : say("card-asks-job-step", { job: of, step });
  };
  const one = only !== undefined && others.length === 0 && !several ? only : undefined;
  return (
    <section class="card-asks" role="alert">
      <p>{one === undefined ? say("card-asks-several") : asked(named(one))}</p>
      <div class={one === undefined ? "choices" : "two-answers"}>
        {elsewhere.map((to) => (
          <button key={`${to.job} ${to.step ?? ""}`} type="button" class="target" onClick={() => onGo(to)}>
            {one === undefined ? say("card-put-to", { title: title(named(to)) }) : say("card-put-there")}
          </button>
        ))}
        <button type="button" class="target" onClick={onHere}>
          {say("card-belongs-here")}
        </button>
      </div>
    </section>
  );
}

/** Where a photo went a moment ago, and the way after it. */
export type Went =
  | { readonly is: "put"; readonly entry: string; readonly title: string }
  | { readonly is: "waits"; readonly job: string; readonly photo: string };

export function WentTo({ job, went }: { readonly job: string; readonly went: Went }) {
  const { say } = useSpeaking();
  const { state } = useKeep();
  if (went.is === "put")
    return (
      <p class="put-to">
        {say("burst-put", { title: went.title })} <Link to={movePath(job, went.entry)}>{say("reading-move")}</Link>
      </p>
    );
  const title = state.books.find(({ kept }) => kept.job === went.job)?.kept.title ?? "";
  return (
    <p class="put-to">
      {say("card-waits-there")} <Link to={burstPath(went.job, went.photo)}>{title}</Link>
    </p>
  );
}
