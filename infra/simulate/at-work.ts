import type { Chance } from "../chance/index.ts";
import { type Client, enterAll, type JobBook, openJob, Phone, type Photos, type Version } from "../demo/index.ts";
import { defaultSheet } from "../sheets/index.ts";
import type { EdgeInNode } from "./edge-in-node.ts";
import { photoBytes, type Sending, scriptOf, sendingsOf } from "./job-script.ts";
import type { StepName } from "./step.ts";

/** One photo of so many is as large as a phone's; the others cost the same but for their bytes, and count for none. */
const WHOLE = 6;
const SMALL_BYTES = 3_000;

/** A job that a crew works at: what its phone has not sent yet. */
export interface Job {
  readonly book: JobBook;
  readonly sendings: readonly Sending[];
  readonly photos: Photos;
}

export interface Crew {
  readonly person: string;
  readonly client: Client;
  work?: Job;
}

/** Where steps are driven, and who is told that one is over; one without a name counts for none. */
export interface Site {
  readonly edge: EdgeInNode;
  readonly took: (step: StepName | undefined) => void;
}

export interface Beginning {
  readonly number: number;
  readonly office: Client;
  readonly officePerson: string;
  readonly versions: readonly Version[];
  readonly entriesPerSend: number;
}

/** The office opens a job, and the crew's phone holds all that will be entered in it. */
export async function begin({ took }: Site, crew: Crew, chance: Chance, beginning: Beginning): Promise<Job> {
  const { number, office, officePerson, versions, entriesPerSend } = beginning;
  const script = scriptOf(number);
  const desk = new Phone(officePerson);
  const book = await openJob(desk, office, script, versions);
  const photos: Photos = new Map();
  let drawn = 0;
  const draw = photoBytes(() => (drawn++ % WHOLE === 0 ? 2_000_000 + chance.below(3_000_000) : SMALL_BYTES));
  const shared = { book, sheet: defaultSheet(), script, photos, labels: new Map(), draw };
  await enterAll({ ...shared, phone: desk, fixes: false }, script.office);
  await office.empty(book);
  took("open a job");
  await enterAll({ ...shared, phone: new Phone(crew.person), fixes: true }, script.crew);
  return { book, sendings: sendingsOf(book, entriesPerSend), photos };
}

/** Sends some entries, then their photos, each of which is read from the queue at once. */
export async function send({ edge, took }: Site, client: Client, { book, photos }: Job, sending: Sending): Promise<void> {
  await client.get("/api/session");
  await client.send("POST", `/api/jobs/${book.job}/entries`, { sent: edge.now, entries: sending.entries });
  took("send entries");
  for (const photo of sending.photos) {
    const bytes = photos.get(photo) ?? new Uint8Array();
    await client.putPhoto(photo, bytes);
    took(bytes.length > SMALL_BYTES + 1_000 ? "send a photo" : undefined);
    await edge.readPhotos();
    took("photo read");
    photos.delete(photo);
  }
}

/** What a page reads again and again while it is looked at (src/screens/field/keep/read.ts), and a job that grew. */
export async function look({ took }: Site, client: Client, job: string): Promise<void> {
  for (const path of ["/api/session", "/api/people", "/api/jobs"]) await client.get(path);
  took("look");
  for (const path of [`/api/jobs/${job}`, `/api/jobs/${job}/ledger`]) await client.get(path);
  took("read a job that grew");
}

export async function officeLooks({ took }: Site, office: Client, job: string, pictures: number): Promise<void> {
  for (const path of ["/api/session", "/api/jobs", "/api/about-to-be-buried"]) await office.get(path);
  const { photos } = await office.get<{ photos: Readonly<Record<string, object>> }>(`/api/jobs/${job}`);
  await office.get(`/api/jobs/${job}/pictures`);
  for (const photo of Object.keys(photos).slice(-pictures)) await office.bytes(`/api/photos/${photo}/screen`);
  took("office looks");
}

export async function issue({ took }: Site, office: Client, job: string): Promise<void> {
  const { record } = await office.send<{ record: string }>("POST", `/api/jobs/${job}/records`, { edition: "customer" });
  await office.bytes(`/api/records/${record}/pdf`);
  took("issue a record");
}

/** Some questions in turn, so that two companies are asked the same on the same day. */
export async function ownerAsks({ took }: Site, owner: Client, day: number, many: number): Promise<void> {
  const { questions } = await owner.get<{ questions: readonly { readonly id: string }[] }>("/api/questions");
  for (let n = 0; n < many; n += 1) await owner.get(`/api/questions/${questions[(day * many + n) % questions.length]?.id}`);
  took("owner asks");
}
