import { chanceFrom } from "../chance/index.ts";
import { Client, found, keep } from "../demo/index.ts";
import { begin, type Crew, issue, look, officeLooks, ownerAsks, type Site, send } from "./at-work.ts";
import type { EdgeInNode } from "./edge-in-node.ts";
import { withHistory } from "./history.ts";
import { ofDay } from "./job-script.ts";
import type { Platform } from "./platform.ts";
import type { StepName, Trace } from "./step.ts";

export interface DrivePlan {
  readonly crews: number;
  readonly days: number;
  /** Finished jobs that are put beside the first one that was finished. */
  readonly history: number;
  readonly seed: number;
}

export interface Driven {
  readonly traces: readonly Trace[];
  readonly crewDays: number;
  readonly requests: number;
  /** Answers that were no success, by kind and status: there must be none. */
  readonly refused: Readonly<Record<string, number>>;
  /** Bytes by which the company's database grew with each job that was driven to its end. */
  readonly bytesPerJob: number;
  /** Of the script that every crew works by. */
  readonly perJob: { readonly entries: number; readonly photos: number; readonly sendings: readonly { readonly photos: number }[] };
}

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;
/** A phone looks at the edge far oftener than it sends; driven is one look after so many sendings. */
const LOOKS = 3;

/** Owner and office sign in anew each day; how is not counted, since it goes by links here. */
async function signedIn(edge: EdgeInNode, company: string, people: { readonly owner: string; readonly office: string }) {
  const operator = { authorization: `Operator ${edge.operatorKey}` };
  const recovery = `/api/companies/${company}/recovery`;
  const recovered = await new Client(edge.address).send<{ link: string }>("POST", recovery, { person: people.owner }, operator);
  const owner = await new Client(edge.address).signIn(recovered.link);
  const { link } = await owner.send<{ link: string }>("POST", `/api/people/${people.office}/links`);
  return { owner, office: await new Client(edge.address).signIn(link) };
}

/** Lets a company's crews work through the edge, day after day, every request answered by the real code. */
export async function drive(edge: EdgeInNode, { crews, days, history, seed }: DrivePlan, { day: assumed }: Platform): Promise<Driven> {
  const chance = chanceFrom(seed);
  const traces: Trace[] = [];
  const refused: Record<string, number> = {};
  let [requests, day] = [0, 0];
  const took = (step: StepName | undefined): void => {
    const works = edge.works.splice(0);
    requests += works.length;
    for (const { kind, status } of works) if (status >= 400) refused[`${kind} ${status}`] = (refused[`${kind} ${status}`] ?? 0) + 1;
    if (step !== undefined) traces.push({ step, works, comparable: day >= assumed.daysPerJob, old: history > 0 });
  };
  const site: Site = { edge, took };

  const company = `c-${seed}`;
  const founded = await found(edge.address, edge.operatorKey, company);
  const versions = await keep(founded);
  const people = { owner: (await founded.owner.get<{ person: string }>("/api/session")).person, office: founded.office.person };
  const all: Crew[] = [founded.first];
  for (let n = 1; n < crews; n += 1) {
    const { person } = await founded.owner.send<{ person: string }>("POST", "/api/people", { name: `Crew ${n}`, role: "crew" });
    const { link } = await founded.owner.send<{ link: string }>("POST", `/api/people/${person}/links`);
    all.push({ person, client: await new Client(edge.address).signIn(link) });
  }

  let [number, crewDays, sent, copied] = [0, 0, 0, 0];
  let perJob: Driven["perJob"] = { entries: 0, photos: 0, sendings: [] };
  const empty = edge.home.bytes();
  for (day = 0; day < days; day += 1) {
    edge.now += DAY_MS;
    const began = edge.now;
    const { owner, office } = await signedIn(edge, company, people);
    took(undefined);
    const ofJob = day % assumed.daysPerJob;
    const isLast = ofJob === assumed.daysPerJob - 1;
    for (const [i, crew] of all.entries()) {
      edge.now = began + 20 * i * MINUTE_MS;
      if (ofJob === 0) {
        number += 1;
        edge.jobs += 1;
        const beginning = { number, office, officePerson: people.office, versions, entriesPerSend: assumed.entriesPerSend };
        crew.work = await begin(site, crew, chance, beginning);
        const { book, photos, sendings } = crew.work;
        perJob = { entries: book.outbox.length, photos: photos.size, sendings: sendings.map((one) => ({ photos: one.photos.length })) };
      }
      const { work } = crew;
      if (work === undefined) throw new Error("a crew without a job");
      const { job } = work.book;
      for (const sending of ofDay(work.sendings, ofJob, assumed.daysPerJob)) {
        edge.now += 1.5 * MINUTE_MS;
        await send(site, crew.client, work, sending);
        sent += 1;
        if (sent % LOOKS === 0) await look(site, crew.client, job);
      }
      await officeLooks(site, office, job, assumed.picturesOpened);
      if (isLast) await issue(site, office, job);
      if (isLast && history > 0 && copied === 0) {
        const before = edge.home.bytes();
        withHistory(edge.home.sqlite, company, job, history);
        copied = edge.home.bytes() - before;
        edge.jobs += history;
      }
      crewDays += 1;
    }
    await ownerAsks(site, owner, day, assumed.questionsAsked);
    await edge.sweep();
    took("every minute");
    if (isLast) await owner.bytes("/api/report");
    if (isLast) took("month's report");
  }
  return { traces, crewDays, requests, refused, bytesPerJob: (edge.home.bytes() - empty - copied) / number, perJob };
}
