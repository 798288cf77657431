import {
  type BeforehandState,
  type Clearance,
  type Finding,
  type HandingOver,
  type JobState,
  jobLedgerOf,
  jobState,
  type Live,
  lookBehind,
} from "../../job/index.ts";
import type { Ledger } from "../../ledger/index.ts";
import { type Language, makeSayer, type Sayer, type Speaking as SentenceSpeaking } from "../../record/index.ts";
import type { JobView, People, Units } from "../../wire/index.ts";
import { type Answer, ask } from "./edge.ts";

/** What a page says of a job beside its findings. */
export type JobHead = Pick<JobView, "job" | "title" | "ownNumber" | "head" | "entries" | "photos">;

/** One job as the edge gave it or as a phone holds it, and what the core makes of its ledger. */
export interface JobNow {
  readonly view: JobHead;
  readonly findings: readonly Finding[];
  readonly clearances: readonly Clearance[];
  readonly handingOver: HandingOver;
  readonly beforehand: readonly BeforehandState[];
  readonly state: JobState;
  readonly ledger: Ledger;
  readonly people: People["people"];
}

/** Findings and clearances come from the edge, the words of the tolerance sheet and the pictures from the ledger. */
export function jobNow(view: JobView, ledger: Ledger, state: JobState, people: People["people"]): JobNow {
  return {
    view,
    findings: view.findings,
    clearances: view.clearances,
    handingOver: view.handingOver,
    beforehand: view.beforehand,
    state,
    ledger,
    people,
  };
}

/** Reads a job; its ledger only when that has grown since. */
export async function readJob(job: string, before: JobNow | undefined, withPeople: boolean): Promise<Answer<JobNow>> {
  const view = await ask<JobView>(`/api/jobs/${job}`);
  if (view.is !== "given") return view;
  if (before !== undefined && before.view.job === job && before.ledger.head.hash === view.value.head.hash)
    return { is: "given", value: jobNow(view.value, before.ledger, before.state, before.people) };
  const [ledger, people] = await Promise.all([
    ask<Ledger>(`/api/jobs/${job}/ledger`),
    withPeople ? ask<People>("/api/people") : ({ is: "away" } as const),
  ]);
  if (ledger.is !== "given") return ledger;
  const state = jobState(jobLedgerOf(ledger.value));
  return { is: "given", value: jobNow(view.value, ledger.value, state, people.is === "given" ? people.value.people : []) };
}

const text = (value: unknown): string => (typeof value === "string" ? value : "");

function nameOf(fact: Live, people: People["people"], someone: string): string {
  const who = fact.entry.who;
  const typed = typeof who === "object" && who !== null && !Array.isArray(who) && "name" in who ? text(who.name) : "";
  return typed || people.find(({ person }) => person === fact.entry.author.person)?.name || someone;
}

/** Who stands behind an entry, and the reason that it gives; `someone` where nobody is named. */
export const behindOf =
  ({ state, people }: JobNow, someone: string) =>
  (entry: string): { readonly name: string; readonly reason: string } => {
    const fact = state.facts.find(({ id }) => id === entry);
    return fact === undefined ? { name: someone, reason: "" } : { name: nameOf(fact, people, someone), reason: text(fact.what.reason) };
  };

/** What the sentences of a job are made with. */
export function speakingOf(now: JobNow, language: Language, units: Units, someone: string): SentenceSpeaking {
  const { state } = now;
  return {
    language,
    units,
    zone: state.opened?.zone ?? "UTC",
    ...(state.sheet === undefined ? {} : { sheet: state.sheet }),
    behind: behindOf(now, someone),
    look: (finding) => {
      const look = lookBehind(state, finding);
      return look && { entry: look.id, at: Math.round(look.at) };
    },
  };
}

/** The maker of this job's sentences. */
export const sayerOf = (...of: Parameters<typeof speakingOf>): Sayer => makeSayer(speakingOf(...of));
