import type { Json } from "../../../ledger/index.ts";
import type { Refusal } from "../../../outcome/index.ts";
import type { SessionView } from "../../../wire/index.ts";
import { type Book, bookMaker } from "./book.ts";
import { chance } from "./chance.ts";
import { type Database, openDatabase, readAbout, writeAbout } from "./database.ts";
import { enter, keepLoose, type Photo } from "./enter.ts";
import { emptyAll, forget } from "./leave.ts";
import { type Reading, readAll } from "./read.ts";
import { askToPersist, freeSpace, holdReserve, isFull, withRoom } from "./room.ts";
import { type Passed, type Progress, sendAll } from "./send.ts";
import type { AboutPhone, KeptJob, OwnEntry, OwnPhoto } from "./shapes.ts";

/** All that the pages of the phone are drawn from. A new object for every change. */
export interface KeepState {
  readonly session?: SessionView;
  readonly people: AboutPhone["session"]["people"];
  /** Who enters on this phone today. */
  readonly today?: AboutPhone["today"];
  readonly phone?: string;
  readonly books: readonly Book[];
  readonly entries: readonly OwnEntry[];
  readonly photos: readonly OwnPhoto[];
  readonly skew: number;
  readonly readAt?: number;
  /** Since when the edge has not answered, the phone's clock. */
  readonly awaySince?: number;
  /** The session has ended: everything is kept, and goes when somebody signs in again. */
  readonly signedOut: boolean;
  /** Another company's crew has signed in on this phone: what is not sent is kept for those who entered it. */
  readonly anothers: boolean;
  readonly sending?: Progress;
  /** When sending is tried again, the phone's clock. */
  readonly triesAgain?: number;
  /** The phone has no room for more. */
  readonly full: boolean;
  readonly persisted: boolean;
}

/** What came of entering: kept, refused by its form, or no room. */
export type Entered =
  | { readonly is: "kept"; readonly own: OwnEntry }
  | { readonly is: "refused"; readonly refusal: Refusal }
  | { readonly is: "no room" };

/** Words of one entry; `photo` travels with it. */
export interface Words {
  readonly what: Json;
  readonly who?: Json;
  readonly where?: Json;
  readonly photo?: Photo;
}

const FIRST_WAIT_MS = 2_000;
const LONGEST_WAIT_MS = 300_000;
const READ_AGAIN_MS = 15_000;

const nothing: KeepState = {
  people: [],
  books: [],
  entries: [],
  photos: [],
  skew: 0,
  signedOut: false,
  anothers: false,
  full: false,
  persisted: false,
};

/** The phone's store and its way to the edge. Everything it says comes from the store, so a cold start without signal says the same. */
export class Keep {
  readonly #database: Database;
  readonly #book = bookMaker();
  readonly #channel = new BroadcastChannel("asburied-keep");
  readonly #listeners = new Set<() => void>();
  #state: KeepState = nothing;
  #wait = FIRST_WAIT_MS;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #reading: Promise<Reading> | undefined;
  #stopped = false;

  private constructor(database: Database) {
    this.#database = database;
    this.#channel.onmessage = () => void this.#reload(false);
  }

  static async open(): Promise<Keep> {
    const keep = new Keep(await openDatabase());
    await keep.#reload(false);
    return keep;
  }

  get state(): KeepState {
    return this.#state;
  }

  /** The edge's clock as well as the phone knows it, ms. */
  now(): number {
    return Date.now() + this.#state.skew;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Reads and sends by itself from now on: at once, when the network comes back, when the page is looked at, and after waits. */
  start(): () => void {
    const look = (): void => {
      if (document.visibilityState === "visible") void this.contact();
    };
    const timer = setInterval(look, READ_AGAIN_MS);
    document.addEventListener("visibilitychange", look);
    addEventListener("online", look);
    void this.contact();
    void holdReserve(this.#database);
    return () => {
      this.#stopped = true;
      clearInterval(timer);
      clearTimeout(this.#timer);
      document.removeEventListener("visibilitychange", look);
      removeEventListener("online", look);
      this.#channel.close();
    };
  }

  /** Sends what is not sent, then reads what is new. */
  async contact(): Promise<void> {
    await this.send();
    await this.read();
  }

  async read(): Promise<void> {
    this.#reading ??= readAll(this.#database);
    const reading = await this.#reading.finally(() => {
      this.#reading = undefined;
    });
    if (reading.is === "read") this.#change({ signedOut: false, anothers: false }, ["awaySince"]);
    else if (reading.is === "another's") this.#change({ anothers: true }, ["awaySince"]);
    else if (reading.is === "away") this.#change({ awaySince: this.#state.awaySince ?? Date.now() });
    else if (reading.problem.status === 401) this.#change({ signedOut: true }, ["awaySince"]);
    await this.#reload(reading.is === "read");
  }

  async send(): Promise<Passed> {
    clearTimeout(this.#timer);
    const waiting =
      this.#state.entries.some(({ standing }) => standing === "not sent") ||
      this.#state.photos.some(({ standing }) => standing === "not sent");
    if (!waiting) return "all sent";
    let last = 0;
    const passed = await sendAll(this.#database, (progress) => {
      this.#change({ sending: progress });
      // what the pages count is read again with each photo that is gone, not with each block of it
      if (progress.photo === undefined && Date.now() - last > 500) {
        last = Date.now();
        void this.#reload(true);
      }
    }).catch((): Passed => "away");
    this.#change({}, ["sending"]);
    await this.#reload(true);
    if (passed === "signed out") this.#change({ signedOut: true });
    if (passed === "another's") this.#change({ anothers: true });
    if (passed === "away") this.#tryAgain();
    if (passed === "all sent") {
      this.#wait = FIRST_WAIT_MS;
      this.#change({}, ["triesAgain"]);
    }
    return passed;
  }

  #tryAgain(): void {
    if (this.#stopped) return;
    const wait = this.#wait * (0.75 + Math.random() / 2);
    this.#wait = Math.min(this.#wait * 2, LONGEST_WAIT_MS);
    this.#change({ awaySince: this.#state.awaySince ?? Date.now(), triesAgain: Date.now() + wait });
    this.#timer = setTimeout(() => void this.contact(), wait);
  }

  /** Keeps an entry of the person of the day, and sends it when there is signal. */
  async enter(job: string, kind: string, { what, who, where, photo }: Words): Promise<Entered> {
    const person = this.#state.today?.person ?? this.#state.session?.person ?? "";
    const parts = { ...(who === undefined ? {} : { who }), ...(where === undefined ? {} : { where }) };
    const entered = await this.#written(() => enter(this.#database, { job, kind, person, made: Date.now(), what, ...parts }, photo));
    if (entered === "no room") return { is: "no room" };
    if (!entered.ok) return { is: "refused", refusal: entered.refusal };
    void this.send();
    return { is: "kept", own: entered.value };
  }

  /** Keeps photos of a burst until each is put to its picture. */
  async keepLoose(job: string, photos: readonly Photo[]): Promise<"kept" | "no room"> {
    for (const photo of photos) if ((await this.#written(() => keepLoose(this.#database, job, photo))) === "no room") return "no room";
    return "kept";
  }

  async #written<T>(write: () => Promise<T>): Promise<T | "no room"> {
    try {
      const value = await withRoom(this.#database, write);
      if (!this.#state.persisted) this.#change({ persisted: await askToPersist() });
      await this.#reload(true);
      return value;
    } catch (error) {
      if (!isFull(error)) throw error;
      this.#change({ full: true });
      return "no room";
    }
  }

  /** Asks again to have the store kept; a browser may grant what it refused before. */
  async askToPersist(): Promise<void> {
    this.#change({ persisted: await askToPersist() });
  }

  /** Bytes that were found free just now, at most `most`: tried, since the browser's own figure is an invention. */
  freeSpace(): Promise<number> {
    return freeSpace(this.#database);
  }

  async chooseToday(person: { readonly person: string; readonly name: string }, day: string): Promise<void> {
    await writeAbout(this.#database, "today", { ...person, day });
    await this.#reload(true);
  }

  /** A photo's bytes, while this phone still has them. */
  async bytesOf(sha256: string): Promise<ArrayBuffer | undefined> {
    return (await this.#database.get("bytes", sha256).catch(() => undefined))?.bytes;
  }

  async smallOf(sha256: string): Promise<ArrayBuffer | undefined> {
    return (await this.#database.get("small", sha256).catch(() => undefined))?.bytes;
  }

  async keepSmall(sha256: string, bytes: ArrayBuffer): Promise<void> {
    await this.#database.put("small", { sha256, bytes }).catch(() => {});
  }

  async draft<T>(place: string): Promise<T | undefined> {
    return (await this.#database.get("drafts", place))?.value as T | undefined;
  }

  async keepDraft(place: string, value: unknown): Promise<void> {
    if (value === undefined) await this.#database.delete("drafts", place);
    else await this.#database.put("drafts", { place, value });
  }

  /** What somebody who signs out leaves behind. */
  async forget(): Promise<void> {
    await forget(this.#database);
    this.#change({ signedOut: false }, ["awaySince"]);
    await this.#reload(true);
  }

  /** Empties this phone's store, what is not sent included: only after somebody saved it to a file or gave it up. */
  async giveUp(): Promise<void> {
    await emptyAll(this.#database);
    this.#change({ anothers: false });
    await this.#reload(true);
    await this.contact();
  }

  /** A refused entry is entered anew by hand, or let go by the person who read why. */
  async letGo(run: number): Promise<void> {
    await this.#database.delete("entries", run);
    await this.#reload(true);
  }

  async #reload(tellOthers: boolean): Promise<void> {
    const database = this.#database;
    const [jobs, entries, photos, session, today, skew, read, phone] = await Promise.all([
      database.getAll("jobs"),
      database.getAll("entries"),
      database.getAll("photos"),
      readAbout(database, "session"),
      readAbout(database, "today"),
      readAbout(database, "skew"),
      readAbout(database, "read"),
      readAbout(database, "phone"),
    ]);
    const { session: _, today: __, phone: ___, readAt: ____, ...rest } = this.#state;
    this.#state = {
      ...rest,
      ...(session === undefined ? {} : { session: session.session }),
      people: session?.people ?? [],
      ...(today === undefined ? {} : { today }),
      ...(phone === undefined ? {} : { phone: phone.id }),
      ...(read === undefined ? {} : { readAt: read.at }),
      skew: skew?.milliseconds ?? 0,
      books: jobs.map((kept: KeptJob) => this.#book(kept, entries)),
      entries,
      photos,
    };
    this.#say();
    if (tellOthers && !this.#stopped) this.#channel.postMessage("changed");
  }

  #change(some: Partial<KeepState>, without: readonly (keyof KeepState)[] = []): void {
    const state: Record<string, unknown> = { ...this.#state, ...some };
    for (const key of without) delete state[key];
    this.#state = state as unknown as KeepState;
    this.#say();
  }

  #say(): void {
    for (const listener of this.#listeners) listener();
  }
}

export const newId = (): string => chance(16);
