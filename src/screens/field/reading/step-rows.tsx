import { type Finding, type Instance, isEntered } from "../../../job/index.ts";
import { countOf, isForElectrician } from "../../parts/counts.ts";
import { Link } from "../../parts/link.tsx";
import { Section } from "../../parts/section.tsx";
import { shapeOfFinding } from "../../parts/shapes.ts";
import { Sign } from "../../parts/sign.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { FindingList } from "../../parts/steps.tsx";
import type { Say } from "../../parts/words/index.ts";
import { isSetUp } from "../covering/points.ts";
import { setUpPath, takePath } from "../paths.ts";
import type { ToldOnPhone } from "../told.ts";
import { setUpItems } from "./set-up-points.ts";
import { typedText } from "./typed-text.ts";
import { findingsOn, isDoubtful, isSaying } from "./verdict-now.tsx";

interface RowsProps {
  readonly job: string;
  readonly told: ToldOnPhone;
  readonly instances: readonly Instance[];
}

/** What a thing's findings are counted as, each word once; the checks that read it say more than that it was taken. */
function verdictWords(found: readonly Finding[], say: Say): string {
  const checks = found.filter(({ of }) => of === "check");
  return [...new Set((checks.length > 0 ? checks : found).map((finding) => say(`counted-${countOf(finding)}`)))].join(", ");
}

/** One thing that a step asks: its sign, its title, what it comes to. */
function Row({ job, told, instance: { item, tag } }: Omit<RowsProps, "instances"> & { readonly instance: Instance }) {
  const { say } = useSpeaking();
  const { now, sayer } = told;
  const found = findingsOn(told, item, tag).filter(isSaying);
  const entered = isEntered(now.state, tag === undefined ? { item } : { item, tag });
  const shown = found.find(isDoubtful) ?? found[0];
  // a check that others decide says nothing of what is not entered here
  const words = verdictWords(entered ? found : found.filter(({ of }) => of !== "check"), say);
  const read = now.state.facts.findLast(
    ({ kind, standing, what }) => kind === "reading-taken" && standing === "counts" && what.item === item.id && what.tag === tag,
  );
  return (
    <li>
      <Link to={takePath(job, item.id, tag)}>
        {shown === undefined || !entered ? (
          <Sign shape="missing" />
        ) : (
          <Sign shape={shapeOfFinding(shown)} quiet={isForElectrician(shown) || shown.weight !== "holds" || shown.by !== undefined} />
        )}
        <span class="step-name">
          <b>{sayer.title({ item: item.id, ...(tag === undefined ? {} : { tag }) })}</b>
          <span>
            {read !== undefined && typedText(item, String(read.what.typed), sayer)}
            {read !== undefined && words !== "" && ": "}
            {words !== ""
              ? words
              : read === undefined && say(entered ? "row-entered" : item.weight === "holds" ? "row-holds" : "row-asked")}
          </span>
        </span>
      </Link>
    </li>
  );
}

/** Places that are read from one set-up stand as one row, which leads to the drawing. */
function SetUps({ job, told, instances }: RowsProps) {
  const { say } = useSpeaking();
  const { now, sayer } = told;
  const { sheet } = now.state;
  const tagged = new Map(instances.map(({ item, tag }) => [item.id, tag]));
  const check = (sheet?.checks ?? []).find(
    (one) => isSetUp(sheet, one) && one.items.every((id) => tagged.has(id)) && isAsked(told, one.id),
  );
  if (check === undefined) return null;
  const tag = tagged.get(check.items[0] ?? "");
  return (
    <li>
      <Link to={setUpPath(job, check.id, tag)}>
        <span class="step-name">
          <b>{say("set-up-of", { title: sayer.words(sheet?.steps.find(({ id }) => id === check.step)?.title) })}</b>
          <span>{say("row-set-up", { count: setUpItems(told, check.step, tag).length })}</span>
        </span>
      </Link>
    </li>
  );
}

const isAsked = ({ now }: ToldOnPhone, check: string): boolean => now.findings.some((one) => one.of === "check" && one.check === check);

const kinds = ["picture", "reading", "answer"] as const;

/** What a step asks, by kind. */
export function Rows({ job, told, instances }: RowsProps) {
  return (
    <>
      {kinds.map((kind) => {
        const some = instances.filter(({ item }) => item.kind === kind);
        if (some.length === 0) return null;
        return (
          <Section key={kind} title={`step-${kind}s`}>
            <ul class="choices">
              {kind === "reading" && <SetUps job={job} told={told} instances={some} />}
              {some.map((instance) => (
                <Row key={`${instance.item.id} ${instance.tag ?? ""}`} job={job} told={told} instance={instance} />
              ))}
            </ul>
          </Section>
        );
      })}
    </>
  );
}

/** What the readings of a step come to, in whole sentences. */
export function Found({
  step,
  tag,
  told: { now, sayer },
}: {
  readonly step: string;
  readonly tag: string | undefined;
  readonly told: ToldOnPhone;
}) {
  const found = now.findings.filter(
    (finding) => finding.step === step && finding.tag === tag && (finding.of === "check" || finding.of === "tag set") && isSaying(finding),
  );
  if (found.length === 0) return null;
  return (
    <Section title="findings">
      <FindingList findings={found} sayer={sayer} />
    </Section>
  );
}
