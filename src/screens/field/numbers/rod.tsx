import { useEffect, useMemo, useState } from "preact/hooks";
import { askedOf, type Instance, itemNamed, type SetOutRow, setOutCard } from "../../../job/index.ts";
import { readQuantity } from "../../../reading/index.ts";
import { useSpeaking } from "../../parts/speaking.ts";
import { PhoneFrame } from "../frame.tsx";
import { useKeep } from "../keep/index.ts";
import { setOutPath } from "../paths.ts";
import { TapeOrText } from "../reading/tape-or-text.tsx";
import type { ToldOnPhone } from "../told.ts";
import { useEnter } from "../use-enter.ts";
import { nextRead, type RodOn, rodInstances } from "./rod-places.ts";
import { Aim, Landed } from "./set-out-row.tsx";

const aboutOf = ({ item, tag }: Instance) => ({ item: item.id, ...(tag === undefined ? {} : { tag }) });
const same = (a: Instance, b: Instance): boolean => a.item.id === b.item.id && a.tag === b.tag;

/** What was read of this place before: it counts still, or the place was moved since. */
function Before({ row, moved, onMoved }: { readonly row: SetOutRow; readonly moved: boolean; readonly onMoved: (moved: boolean) => void }) {
  const { say } = useSpeaking();
  return (
    <fieldset class="row-of-two">
      <legend>{say("rod-moved-since", { place: say(`out-place-${row.place}`) })}</legend>
      <button type="button" class="target" aria-pressed={moved} onClick={() => onMoved(true)}>
        {say("rod-moved")}
      </button>
      <button type="button" class="target" aria-pressed={!moved} onClick={() => onMoved(false)}>
        {say("rod-not-moved")}
      </button>
    </fieldset>
  );
}

interface RodPageProps {
  readonly job: string;
  readonly on: RodOn;
  readonly told: ToldOnPhone;
}

/** A rod reading in the set-up in use: what to look for stands above the tape. */
export function RodPage({ job, on, told }: RodPageProps) {
  const { say, session, go } = useSpeaking();
  const { keep } = useKeep();
  const enter = useEnter(job);
  const { now, sayer } = told;
  const card = useMemo(() => setOutCard(now.state), [now.state]);
  const row = card.rows.find(({ place }) => place === on);
  const instances = rodInstances(now, on);
  const facts = new Map(now.state.facts.map((fact) => [fact.id, fact]));
  const [chosen, setChosen] = useState<Instance>();
  const [typed, setTyped] = useState("");
  const [refused, setRefused] = useState("");
  const [said, setSaid] = useState<boolean>();
  const draft = `rod ${job} ${on}`;
  useEffect(() => {
    void keep.draft<string>(draft).then((kept) => kept !== undefined && setTyped(kept));
  }, [keep, draft]);
  const back = { to: setOutPath(job), title: say("numbers-set-out") };
  const title = say(`out-place-${on}`);
  const instance = instances.find((one) => chosen !== undefined && same(one, chosen)) ?? nextRead(now.state, card, on, instances);
  if (card.setUp === undefined || instance === undefined)
    return (
      <PhoneFrame title={title} back={back}>
        <p>{say("out-no-set-up")}</p>
      </PhoneFrame>
    );
  const own = row?.readings.find(({ item, tag }) => item === instance.item.id && tag === instance.tag);
  // what is read after the backfill is evidence that stays; of what holds a covering nothing is set aside unless somebody says so
  const canMove = row !== undefined && own !== undefined && instance.item.needsHidden === undefined;
  const moved = canMove && (said ?? (instance.item.weight !== "holds" && own.move !== "leave"));
  const unit = instance.item.unit?.[session.units] ?? "";

  /** Readings from before it was moved must not be averaged with what is read now. A rim moves as a whole. */
  const setAside = async (): Promise<boolean> => {
    const reason = say("rod-moved-reason");
    for (const { item, tag, entries } of row?.readings ?? []) {
      const about = { item, ...(tag === undefined ? {} : { tag }) };
      const isHolding = now.state.sheet !== undefined && itemNamed(now.state.sheet, item)?.weight === "holds";
      const withdrawn = entries.flatMap((id) => facts.get(id)?.entry ?? []);
      const words = isHolding
        ? [["reworked", { about, done: reason, minutes: 0 }] as const]
        : withdrawn.map(({ id, digest }) => ["corrected", { entry: { id, digest }, reason, withdrawn: true }] as const);
      for (const [kind, what] of words) if ((await enter(kind, { what }))?.is !== "kept") return false;
    }
    return true;
  };
  const take = async (): Promise<void> => {
    const value = readQuantity(typed, askedOf(instance.item, unit));
    if (!value.ok) return setRefused(sayer.refusal(value.refusal));
    if (moved && !(await setAside())) return;
    const answer = await enter("reading-taken", { what: { ...aboutOf(instance), typed, unit, setUp: card.setUp ?? "" }, draft });
    if (answer?.is === "no room") return setRefused(say("unsent-full"));
    if (answer?.is === "refused") return setRefused(sayer.refusal(answer.refusal));
    if (answer?.is !== "kept") return;
    go(setOutPath(job));
  };
  const change = (text: string): void => {
    setTyped(text);
    setRefused("");
    void keep.keepDraft(draft, text === "" ? undefined : text);
  };
  return (
    <PhoneFrame title={title} back={back}>
      {row !== undefined && (
        <p class="set-out-row looked-for">
          <span>{say("rod-look-for")}</span>
          <Aim row={row} />
          {own !== undefined && <Landed reading={own} sayer={sayer} />}
        </p>
      )}
      {instances.length > 1 && row !== undefined && (
        <fieldset class="row-of-two rod-places">
          <legend>{say("rod-which")}</legend>
          {instances.map((one) => (
            <button
              key={`${one.item.id} ${one.tag ?? ""}`}
              type="button"
              class="target"
              aria-pressed={same(one, instance)}
              onClick={() => setChosen(one)}
            >
              {sayer.title(aboutOf(one))}
            </button>
          ))}
        </fieldset>
      )}
      {instance.item.prompt !== undefined && <p class="prompt">{sayer.words(instance.item.prompt)}</p>}
      {canMove && <Before row={row} moved={moved} onMoved={setSaid} />}
      <TapeOrText key={instance.item.id} item={instance.item} unit={unit} value={typed} onChange={change} label={title} />
      <p role="alert">{refused}</p>
      <div class="shutter-row alone">
        <button type="button" class="target main enter-reading" onClick={() => void take()}>
          {say("reading-enter")}
        </button>
      </div>
    </PhoneFrame>
  );
}
