import { type Item, type SitePlaced, siteMarks, sitePlaced } from "../../../job/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import type { Taking } from "../job-part.ts";

/** From which mark a tie was taken, and on which side its point lies. */
export interface TiedFrom {
  readonly mark?: string;
  readonly side?: "left" | "right";
}

interface FromMarkProps extends Taking {
  readonly tied: TiedFrom;
  readonly onChange: (tied: TiedFrom) => void;
}

/** Marks that were named and that no tie was taken from yet, as a tie calls them; the thing itself is none. */
function namedMarks({ now: { state } }: Taking["told"], site: SitePlaced, item: Item, tag: string | undefined): readonly string[] {
  const used = new Set(site.marks.flatMap((mark) => mark.tag?.set ?? []));
  const tied = new Set((state.sheet?.items ?? []).flatMap((one) => (one.fromMark === true ? (one.tags ?? []) : [])));
  const sets = used.size > 0 ? used : tied;
  return state.tags
    .filter((one) => sets.has(one.set) && !(one.set === item.tags && one.tag === tag) && !site.marks.some((mark) => mark.tag === one))
    .map((one) => (one.description === undefined ? one.tag : `${one.tag}, ${one.description}`));
}

/** The marks of the site to choose from, or a new one by its name; then the side, for someone who looks from the first mark to the second. */
export function FromMark({ told, item, tag, tied, onChange }: FromMarkProps) {
  const { say } = useSpeaking();
  const site = sitePlaced(told.now.state, "all");
  const placed = site.marks.map(({ name }) => name);
  const known = [...new Set([...placed, ...namedMarks(told, site, item, tag), ...siteMarks(told.now.state).tieMarks])];
  const own = site.points.find(({ item: of, tag: named }) => of.step === item.step && named?.tag === tag);
  const [first, second] = own?.ties.map(({ mark }) => mark) ?? [];
  const [from, to] = first === undefined ? [tied.mark, undefined] : [first, second ?? (tied.mark === first ? undefined : tied.mark)];
  return (
    <div class="choices">
      <p>
        <b>{say("tie-from")}</b>
      </p>
      {known.map((name) => (
        <button key={name} type="button" class="target" aria-pressed={tied.mark === name} onClick={() => onChange({ ...tied, mark: name })}>
          {name}
        </button>
      ))}
      <label class="typed">
        {say("tie-other-mark")}
        <input
          type="text"
          autoComplete="off"
          value={tied.mark !== undefined && !known.includes(tied.mark) ? tied.mark : ""}
          onInput={(event) => onChange({ ...tied, mark: event.currentTarget.value })}
        />
      </label>
      {from !== undefined && to !== undefined && from !== to && (
        <>
          <p>{say("tie-side", { from, to })}</p>
          {(["left", "right"] as const).map((side) => (
            <button key={side} type="button" class="target" aria-pressed={tied.side === side} onClick={() => onChange({ ...tied, side })}>
              {say(`tie-${side}`)}
            </button>
          ))}
        </>
      )}
    </div>
  );
}
