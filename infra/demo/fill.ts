import { defaultSheet, oldPondSheet } from "../sheets/index.ts";
import { Client } from "./client.ts";
import { company, kitCards } from "./company.ts";
import { courtyard, lookedAt, lookedAtFrom } from "./courtyard.ts";
import { drawing } from "./drawings.ts";
import { type Entering, enterAll, type Photos } from "./enter.ts";
import { found, keep } from "./founding.ts";
import { enterMeasured } from "./measured.ts";
import { oldPond } from "./old-pond.ts";
import { openJob } from "./open-job.ts";
import { type JobBook, Phone } from "./phone.ts";
import { sideYard } from "./side-yard.ts";

export interface DemoPlan {
  /** Address of the edge, without a slash at the end. */
  readonly edge: string;
  readonly operatorKey: string;
  readonly log: (line: string) => void;
  /** The job by the second tolerance sheet: filled as well, or its record printed too. */
  readonly oldPond?: "filled" | "printed";
}

type Links = { readonly crew: string; readonly office: string; readonly owner: string };

/** The demo company with its jobs, before anything is printed. */
export interface Filled {
  /** Whole addresses that sign in. */
  readonly links: Links;
  readonly jobs: readonly string[];
  readonly office: Client;
}

async function put(client: Client, photos: Photos): Promise<void> {
  for (const [sha256, bytes] of photos) await client.putPhoto(sha256, bytes);
  photos.clear();
}

const WAIT_MS = 300;
const PATIENCE_MS = 120_000;

/** Until media has read every photo of the job. */
async function untilRead(client: Client, job: string): Promise<number> {
  const began = Date.now();
  for (;;) {
    const { photos, findings } = await client.get<{ photos: Record<string, { state: string }>; findings: unknown[] }>(`/api/jobs/${job}`);
    const states = Object.values(photos).map(({ state }) => state);
    if (states.length > 0 && states.every((state) => state === "read")) return states.length;
    if (states.includes("unreadable")) throw new Error("a picture could not be read");
    if (Date.now() - began > PATIENCE_MS)
      throw new Error(`photos were not read in ${PATIENCE_MS / 1000} s (${states.length} known, ${findings.length} findings)`);
    await new Promise((resolve) => setTimeout(resolve, WAIT_MS));
  }
}

/** The office looks at some of the pictures. */
async function look(desk: Phone, book: JobBook): Promise<void> {
  let made = lookedAtFrom;
  for (const { item, says } of lookedAt) {
    for (const entry of [...book.entries]) {
      if (entry.kind !== "picture-taken" || (entry.what as { item?: string }).item !== item) continue;
      await desk.enter(book, "picture-looked-at", made, { what: { picture: entry.id, says } });
      made += 60_000;
    }
  }
}

/** The links of the demo's own company, which work again and again on a local stack. */
async function demoLinks(edge: string, operatorKey: string): Promise<Links> {
  const { crew, office, owner } = await new Client(edge).send<Links>("POST", "/api/demo/links", undefined, {
    authorization: `Operator ${operatorKey}`,
  });
  const absolute = (link: string): string => new URL(link, edge).href;
  return { crew: absolute(crew), office: absolute(office), owner: absolute(owner) };
}

/** Fills an empty stack with the demo company and its jobs through the public API, as phones and desks would. @throws with the reason, when any part refuses. */
export async function fillDemo(plan: DemoPlan): Promise<Filled> {
  const { edge, operatorKey, log } = plan;
  const founded = await found(edge, operatorKey);
  const { office, first, second } = founded;
  const versions = await keep(founded);
  log(`${company.name}: two tolerance sheets, ${kitCards.length} kit cards, four people`);

  const desk = new Phone(office.person);
  const jobs: JobBook[] = [];
  for (const [script, crew] of [
    [courtyard, first],
    [sideYard, second],
    ...(plan.oldPond === undefined ? [] : [[oldPond, second] as const]),
  ] as const) {
    const book = await openJob(desk, office.client, script, versions);
    const photos: Photos = new Map();
    const sheet = script.sheet === undefined ? defaultSheet() : oldPondSheet();
    const shared = {
      ...{ book, sheet, script, photos, labels: new Map(), draw: drawing },
      company: company.id,
    } satisfies Partial<Entering>;
    await enterAll({ ...shared, phone: desk, fixes: false }, script.office);
    await office.client.empty(book);
    const phone = new Phone(crew.person);
    await enterAll({ ...shared, phone, fixes: true }, script.crew);
    await enterMeasured({ ...shared, phone, isDrawn: true }, script.measured ?? []);
    // back in signal: some photos reach the edge before their entries, the rest after
    const early: Photos = new Map([...photos].filter((_, i) => i % 3 === 0));
    for (const sha256 of early.keys()) photos.delete(sha256);
    const count = early.size + photos.size;
    await put(crew.client, early);
    const sent = await crew.client.empty(book);
    await put(crew.client, photos);
    await untilRead(office.client, book.job);
    log(`${script.title}: ${sent} entries and ${count} pictures from a phone that had no signal till now, all read`);
    if (script === courtyard) await look(desk, book);
    await enterAll({ ...shared, phone: desk, fixes: false }, script.afterwards);
    await office.client.empty(book);
    jobs.push(book);
  }
  return { links: await demoLinks(edge, operatorKey), jobs: jobs.map(({ job }) => job), office: office.client };
}
