import { type About, factsOf, type Live, type Whats } from "../job/index.ts";
import type { Context } from "./context.ts";
import { figureText } from "./equipment-view.ts";
import type { DecisionView } from "./model.ts";
import { fill } from "./speaking.ts";

function view(context: Context, fact: Live, title: string, kind: string, says: string): DecisionView {
  return { title, kind, says, by: context.nameOf(fact), when: context.sayer.moment(fact.at) };
}

type Conceded = Live & { readonly what: Whats["concession"] };

interface Decided {
  readonly at: number;
  readonly view: DecisionView;
}

/** Who asked for a change of the design and who agreed to it, where its entry names them. */
function askedAndAgreed({ texts, namePrinted }: Context, { entry: { who } }: Live): string {
  if (typeof who !== "object" || who === null || Array.isArray(who)) return "";
  const said = (["asked", "agreed"] as const).flatMap((key) => {
    const name = (who as { readonly [key: string]: unknown })[key];
    return typeof name === "string" && name !== "" ? [fill(texts(`design-${key}`), { name: namePrinted(name, "") })] : [];
  });
  return said.join(" ");
}

/** Each change of a figure or a switch that the design had before; what is set for the first time changes nothing. */
function designChanges(context: Context): readonly Decided[] {
  const { state, sheet, sayer, texts } = context;
  const figures = new Map<string, string>();
  const switches = new Map<string, string>();
  return factsOf(state, "design-set").flatMap((fact) => {
    const changed = (known: Map<string, string>, key: string, title: string, now: string): readonly string[] => {
      const before = known.get(key);
      known.set(key, now);
      return before === undefined || before === now ? [] : [fill(texts("design-change"), { title, before, now })];
    };
    const changes = [
      ...Object.entries(fact.what.figures ?? {}).flatMap(([key, figure]) =>
        changed(figures, key, sayer.figureTitle(key), figureText(context, figure)),
      ),
      ...Object.entries(fact.what.switches ?? {}).flatMap(([key, on]) =>
        changed(switches, key, sayer.words(sheet.switches.find((s) => s.id === key)?.title) || key, texts(on ? "yes" : "no")),
      ),
    ];
    const says = [fact.what.reason ?? "", askedAndAgreed(context, fact)].filter((part) => part !== "").join(" ");
    return changes.length === 0 ? [] : [{ at: fact.position, view: view(context, fact, changes.join("; "), texts("kind-design"), says) }];
  });
}

/** Why and how far, and the customer's own word where it rests on that. */
function concessionText({ texts, namePrinted }: Context, { what: { reason, extent, customerSaid }, entry: { who } }: Conceded): string {
  const said = fill(texts("concession-says"), { reason, extent });
  if (customerSaid === undefined) return said;
  const customer = typeof who === "object" && who !== null && "customer" in who && typeof who.customer === "string" ? who.customer : "";
  const name = customer === "" ? "" : namePrinted(customer, "");
  return `${said} ${fill(texts("concession-customer"), { name, said: customerSaid })}`;
}

/** What was accepted as built, agreed beforehand, let through by telephone, done over or designed anew, in the order of the work. */
export function decisionViews(context: Context): readonly DecisionView[] {
  const { state, sayer, texts, sheet } = context;
  const title = (about: About): string => sayer.title(about);
  const quantity = ({ check }: About, value: number | undefined): string => {
    const kind = sheet.checks.find(({ id }) => id === check)?.kind ?? "length";
    return value === undefined ? "…" : sayer.quantity(kind, value);
  };
  const concessions = factsOf(state, "concession").map((f) => ({
    at: f.position,
    view: view(context, f, title(f.what.about), texts("kind-concession"), concessionText(context, f)),
  }));
  const departures = factsOf(state, "departure-agreed").map((f) => ({
    at: f.position,
    view: view(
      context,
      f,
      title(f.what.about),
      texts("kind-departure"),
      fill(texts("departure-says"), {
        reason: f.what.reason,
        lower: quantity(f.what.about, f.what.lower),
        upper: quantity(f.what.about, f.what.upper),
      }),
    ),
  }));
  const words = factsOf(state, "go-ahead");
  const denied = new Map(factsOf(state, "go-ahead-denied").map((f) => [f.what.goAhead, f.what.reason]));
  const goAheads = words
    .filter((f) => f.what.confirms === undefined)
    .map((f) => {
      const confirmed = words.some((other) => other.what.confirms === f.id);
      const act = sayer.words(sheet.coverings.find((c) => c.id === f.what.covering)?.title);
      return {
        at: f.position,
        view: view(
          context,
          f,
          act,
          texts("kind-go-ahead"),
          denied.has(f.id)
            ? `${f.what.reason} (${fill(texts("word-denied"), { reason: denied.get(f.id) ?? "" })})`
            : `${f.what.reason} (${texts(confirmed ? "word-confirmed" : "word-not-confirmed")})`,
        ),
      };
    });
  const reworks = factsOf(state, "reworked").map((f) => ({
    at: f.position,
    view: view(
      context,
      f,
      title(f.what.about),
      texts("kind-rework"),
      fill(texts("rework-says"), { done: f.what.done, minutes: String(f.what.minutes) }),
    ),
  }));
  return [...concessions, ...departures, ...goAheads, ...reworks, ...designChanges(context)]
    .sort((a, b) => a.at - b.at)
    .map(({ view: v }) => v);
}
