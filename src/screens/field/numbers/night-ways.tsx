import { useState } from "preact/hooks";
import type { Item, NightMatter } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { takePath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";
import { useEnter } from "../use-enter.ts";

interface NightWaysProps {
  readonly job: string;
  readonly matter: NightMatter;
  /** What was entered from then on counts for tonight, ms. */
  readonly since: number;
  readonly told: ToldOnPhone;
}

const entering: Partial<Readonly<Record<Item["kind"], string>>> = { answer: "answered", picture: "picture-taken" };

/** What settles one matter of the night: its answers, pressed here, and its picture. */
export function NightWays({ job, matter, since, told: { now, sayer } }: NightWaysProps) {
  const { say } = useSpeaking();
  const enter = useEnter(job);
  const [refused, setRefused] = useState("");
  const items = (now.state.sheet?.items ?? []).filter(({ tonight }) => tonight === matter);
  const newest = ({ id, kind }: Item) =>
    now.state.facts.findLast(
      (fact) => fact.kind === entering[kind] && fact.standing === "counts" && fact.what.item === id && fact.at >= since,
    );
  const answer = async (item: Item, choice: string): Promise<void> => {
    setRefused("");
    const entered = await enter("answered", { what: { item: item.id, choice } });
    if (entered?.is === "no room") setRefused(say("unsent-full"));
    if (entered?.is === "refused") setRefused(sayer.refusal(entered.refusal));
  };
  return (
    <div class="night-ways">
      {items.map((item) =>
        item.kind === "answer" ? (
          <fieldset key={item.id} class="row-of-two">
            <legend>{sayer.words(item.title)}</legend>
            {(item.choices ?? []).map(({ id, title }) => (
              <button
                key={id}
                type="button"
                class="target"
                aria-pressed={newest(item)?.what.choice === id}
                onClick={() => void answer(item, id)}
              >
                {sayer.words(title)}
              </button>
            ))}
          </fieldset>
        ) : (
          <Link key={item.id} to={takePath(job, item.id)}>
            {say(newest(item) === undefined ? "night-take" : "night-taken", { title: sayer.words(item.title) })}
          </Link>
        ),
      )}
      <p role="alert">{refused}</p>
    </div>
  );
}
