import type { About, Check, Finding } from "../../../job/index.ts";
import type { Json } from "../../../ledger/index.ts";
import { readQuantity } from "../../../reading/index.ts";
import type { JobTold } from "../../parts/job-page.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { DecisionForm, type Said, Typed } from "./decision-form.tsx";

interface DecisionsProps {
  readonly job: string;
  readonly told: JobTold;
  readonly about: About;
  readonly finding: Finding | undefined;
}

const plain = (about: About): Json => ({ ...about });

/** What can be decided about one thing: accepted as built, agreed to depart from it, done over, or that it does not apply. */
export function Decisions({ job, told, about, finding }: DecisionsProps) {
  const { say, session } = useSpeaking();
  const { sheet } = told.now.state;
  const check = sheet?.checks.find(({ id }) => id === about.check);
  const asked = check ?? sheet?.items.find(({ id }) => id === about.item);
  const covered = told.now.clearances.find(({ covering }) => covering === finding?.holds)?.covered;
  return (
    <section class="decisions">
      <h3>{say("deciding-decide")}</h3>
      <DecisionForm
        job={job}
        entered={told.again}
        kind="concession"
        title="deciding-accept"
        enter="deciding-accept-enter"
        said={(typed): Said => {
          const customerSaid = typed("customerSaid");
          const customer = typed("customer");
          return {
            what: {
              about: plain(about),
              extent: typed("extent"),
              reason: typed("reason"),
              ...(customerSaid === "" ? {} : { customerSaid }),
            },
            who: { name: typed("name"), ...(customer === "" ? {} : { customer }) },
          };
        }}
      >
        <p>{say("deciding-accept-how")}</p>
        <Typed name="extent" word="deciding-extent" />
        <Typed name="reason" word="deciding-reason" long={true} />
        <Typed name="name" word="deciding-name" value={session.name} />
        {asked?.customerAccepts === true && <p>{say("deciding-customer-asked")}</p>}
        <Typed name="customerSaid" word="deciding-customer-said" long={true} optional={asked?.customerAccepts !== true} />
        <Typed name="customer" word="deciding-customer" optional={asked?.customerAccepts !== true} />
      </DecisionForm>
      {check !== undefined && check.asks === undefined && (
        <Departure job={job} told={told} about={about} check={check} late={covered !== undefined} />
      )}
      <DecisionForm
        job={job}
        entered={told.again}
        kind="rework-asked"
        title="deciding-rework"
        enter="deciding-rework-enter"
        said={(typed) => ({ what: { about: plain(about), reason: typed("reason") } })}
      >
        <p>{say("deciding-rework-how")}</p>
        <Typed name="reason" word="deciding-rework-what" long={true} />
      </DecisionForm>
      <DecisionForm
        job={job}
        entered={told.again}
        kind="does-not-apply"
        title="deciding-not-apply"
        enter="deciding-not-apply-enter"
        said={(typed) => ({ what: { about: plain(about), reason: typed("reason"), role: session.role } })}
      >
        <Typed name="reason" word="deciding-reason" long={true} />
      </DecisionForm>
    </section>
  );
}

interface DepartureProps {
  readonly job: string;
  readonly told: JobTold;
  readonly about: About;
  readonly check: Check;
  /** What it holds is covered already: then nothing can be agreed beforehand. */
  readonly late: boolean;
}

/** Limits agreed before the covering, typed with their unit; at least one of the two. */
function Departure({ job, told, about, check, late }: DepartureProps) {
  const { say, session } = useSpeaking();
  const { sheet } = told.now.state;
  if (late) return <p>{say("deciding-departure-late")}</p>;
  const item = sheet?.items.find(({ id, quantity }) => check.items.includes(id) && quantity === check.kind);
  const unit = item?.unit?.[session.units] ?? { inch: "in", metric: "mm" }[session.units];
  const read = (typed: string): number | undefined | { readonly unread: string } => {
    if (typed === "") return undefined;
    const outcome = readQuantity(typed, { kind: check.kind, unit, signed: true });
    return outcome.ok ? outcome.value.value : { unread: told.sayer.refusal(outcome.refusal) };
  };
  return (
    <DecisionForm
      job={job}
      entered={told.again}
      kind="departure-agreed"
      title="deciding-departure"
      enter="deciding-departure-enter"
      said={(typed): Said => {
        const [lower, upper] = [read(typed("lower")), read(typed("upper"))];
        if (typeof lower === "object") return lower;
        if (typeof upper === "object") return upper;
        if (lower === undefined && upper === undefined) return { unread: say("deciding-departure-no-limit") };
        return {
          what: {
            about: plain(about),
            ...(lower === undefined ? {} : { lower }),
            ...(upper === undefined ? {} : { upper }),
            reason: typed("reason"),
          },
          who: { name: typed("name") },
        };
      }}
    >
      <p>{say("deciding-departure-how", { unit })}</p>
      <Typed name="lower" word="deciding-least" optional={true} />
      <Typed name="upper" word="deciding-most" optional={true} />
      <Typed name="reason" word="deciding-reason" long={true} />
      <Typed name="name" word="deciding-agreed-by" value={session.name} />
    </DecisionForm>
  );
}
