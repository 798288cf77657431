import { afterPaint, idle } from "./after-paint.ts";
import type { Book } from "./book.ts";
import { afterReading, afterStored, changed, FIRST_WAIT_MS, nextTry } from "./changes.ts";
import { type Database, openDatabase, writeAbout } from "./database.ts";
import { enter, keepLoose, moveLoose, type Photo, removeLoose } from "./enter.ts";
import { Glances } from "./glances.ts";
import { appHere, ownMark } from "./heads.ts";
import type { Judge } from "./judge.ts";
import { emptyAll, forget } from "./leave.ts";
import { findAgain } from "./lost.ts";
import type { Passed } from "./passed.ts";
import { type Reading, readAll } from "./read.ts";
import { askToPersist, freeSpace, holdReserve, isFull, withRoom } from "./room.ts";
import { sendAll } from "./send.ts";
import type { Glance, JobHead, KeptJob, OwnEntry } from "./shapes.ts";
import { type Entered, type KeepState, nothing, type Words } from "./state.ts";
import { storedIn } from "./stored.ts";

const READ_AGAIN_MS = 15_000;
/** While another page of this phone sends: it may be closed in the middle of it. */
const OTHER_PAGE_MS = 3_000;

/** The phone's store and its way to the edge. Everything it says comes from the store, so a cold start without signal says the same. */
export class Keep {
  readonly #database: Database;
  /** What makes books of jobs: a script of its own, since the first screen does without. */
  #judge: Judge | undefined;
  #whole: Promise<void> | undefined;
  /** The jobs as last read from the store; a ledger is read again only when its head is another. */
  #jobs: ReadonlyMap<string, KeptJob> = new Map();
  readonly #glances: Glances;
  readonly #channel = new BroadcastChannel("asburied-keep");
  readonly #listeners = new Set<() => void>();
  #state: KeepState = nothing;
  #wait = FIRST_WAIT_MS;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #reading: Promise<Reading> | undefined;
  #stopped = false;
  #turn = 0;
  #shown = 0;
  #whoAnswered: ((chosen: boolean) => void) | undefined;

  private constructor(database: Database) {
    this.#database = database;
    this.#glances = new Glances(database, appHere());
    this.#channel.onmessage = () => void this.#reload(false);
  }

  static async open(): Promise<Keep> {
    const database = await openDatabase();
    const keep = new Keep(database);
    await keep.#reload(false);
    return keep;
  }

  /** Reads the jobs themselves, and what judges them. Every page but the first screen waits for it. */
  whole(): Promise<void> {
    this.#whole ??= import("./judge.ts")
      .then(async ({ newJudge }) => {
        this.#judge = newJudge();
        await this.#reload(false);
      })
      .catch((error: unknown) => {
        this.#whole = undefined;
        throw error;
      });
    return this.#whole;
  }

  /** What the first screen says of each job at `now`; of one that nothing holds of any more, nothing until it is judged anew. */
  glances(now: number): readonly { readonly head: JobHead; readonly glance: Glance | undefined }[] {
    return this.#state.heads.map((head) => ({ head, glance: this.#glance(head, now) }));
  }

  #glance(head: JobHead, now: number): Glance | undefined {
    const { books, entries, skew } = this.#state;
    const own = ownMark(entries, head.job, skew);
    const book = books.find(({ kept }) => kept.job === head.job);
    return this.#glances.of(head, own, now) ?? (book && this.#judge && this.#glances.made(head, own, this.#judge.glanceOf(book, now)));
  }

  /** Keeps for the next start what the first screen says, one job after the other, whenever this phone has time. */
  #keepGlances(): void {
    if (this.#judge === undefined) return;
    this.#glances.later(async () => {
      for (const { job } of this.#state.heads) {
        await idle();
        const head = this.#state.heads.find((one) => one.job === job);
        if (head !== undefined && this.#glance(head, this.now()) !== undefined) await this.#glances.keep(head);
      }
    });
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
    this.#stopped = false;
    const look = (): void => {
      if (document.visibilityState === "visible") void this.contact();
    };
    // an edge in trouble is asked again after longer and longer waits, and by nothing else
    const again = (): void => {
      if ((this.#state.triesAgain ?? 0) <= Date.now()) look();
    };
    const timer = setInterval(again, READ_AGAIN_MS);
    document.addEventListener("visibilitychange", look);
    addEventListener("online", look);
    void findAgain(this.#database)
      .then((found) => (found ? this.#reload(true) : undefined))
      .finally(() => this.contact());
    void this.#lookForRoom();
    return () => {
      this.#stopped = true;
      clearInterval(timer);
      clearTimeout(this.#timer);
      document.removeEventListener("visibilitychange", look);
      removeEventListener("online", look);
    };
  }

  /** Full is a phone that cannot even hold the reserve: said before a picture finds no room. */
  async #lookForRoom(): Promise<void> {
    this.#change({ full: !(await holdReserve(this.#database)) });
  }

  /** Sends what is not sent, then reads what is new. */
  async contact(): Promise<void> {
    await this.send();
    await this.read();
  }

  async read(): Promise<void> {
    this.#reading ??= readAll(this.#database);
    const reading = await this.#reading
      .finally(() => {
        this.#reading = undefined;
      })
      .catch((error: unknown): undefined => {
        if (!isFull(error)) throw error;
        this.#change({ full: true });
      });
    // what the office has new finds no room here: what this phone holds stays, and goes first
    if (reading === undefined) return;
    this.#become(afterReading(this.#state, reading, Date.now()));
    await this.#reload(reading.is === "read");
    // what judges the jobs could not be fetched when it was asked for: a first visit with a weak signal
    void this.whole().catch(() => {});
  }

  async send(): Promise<Passed> {
    clearTimeout(this.#timer);
    const waiting =
      this.#state.entries.some(({ standing }) => standing === "not sent") ||
      this.#state.photos.some(({ standing }) => standing === "not sent");
    if (!waiting) {
      if (this.#state.triesAgain !== undefined) this.#change({}, ["triesAgain"]);
      return "all sent";
    }
    let last = 0;
    const passed = await sendAll(this.#database, (progress) => {
      this.#change({ sending: progress });
      // what the pages count is read again with each photo that is gone, not with each block of it
      if (progress.photo === undefined && Date.now() - last > 500) {
        last = Date.now();
        void this.#reload(true);
      }
    }).catch((error: unknown): Passed => {
      if (isFull(error)) this.#change({ full: true });
      return "away";
    });
    if (passed === "another is sending") {
      clearTimeout(this.#timer);
      if (!this.#stopped) this.#timer = setTimeout(() => void this.send(), OTHER_PAGE_MS);
      return passed;
    }
    this.#change({}, ["sending"]);
    await this.#reload(true);
    if (passed === "signed out") this.#change({ signedOut: true }, ["triesAgain"]);
    if (passed === "another's") this.#change({ anothers: true }, ["triesAgain"]);
    if (passed === "away") this.#tryAgain();
    if (passed === "all sent") {
      this.#wait = FIRST_WAIT_MS;
      this.#change({}, ["triesAgain"]);
      await this.#lookForRoom();
    }
    return passed;
  }

  #tryAgain(): void {
    clearTimeout(this.#timer);
    if (this.#stopped) return;
    const now = Date.now();
    const { awaySince = now } = this.#state;
    const { after, wait } = nextTry(now, this.#state, this.#wait, Math.random());
    this.#wait = wait;
    this.#change({ awaySince, triesAgain: now + after });
    this.#timer = setTimeout(() => void this.contact(), after);
  }

  /** Keeps an entry of the person of the day, and sends it when there is signal. */
  async enter(job: string, kind: string, { what, who, where, photo, draft, by, kept }: Words): Promise<Entered> {
    const person = by ?? this.#state.today?.person ?? this.#state.session?.person ?? "";
    const parts = {
      ...(who === undefined ? {} : { who }),
      ...(where === undefined ? {} : { where }),
      ...(draft === undefined ? {} : { draft }),
    };
    const isLarge = photo !== undefined && !this.#state.photos.some(({ sha256 }) => sha256 === photo.sha256);
    const entering = { job, kind, person, made: Date.now(), what, ...parts };
    // what a reading comes to is worked out while the store writes it down; it is shown when it is written
    const ahead = (own: OwnEntry): void => this.#judge?.ahead(this.#jobs.get(job), [...this.#state.entries, own], this.#state.skew, own);
    const entered = await this.#written(
      isLarge,
      () => enter(this.#database, entering, photo, ahead),
      (outcome) => {
        if (outcome.ok) kept?.(outcome.value.id);
        if (outcome.ok && photo === undefined) this.#add(outcome.value);
        return outcome.ok && photo === undefined;
      },
    );
    if (entered === "no room") return { is: "no room" };
    if (!entered.ok) return { is: "refused", refusal: entered.refusal };
    afterPaint(() => void this.send());
    return { is: "kept", own: entered.value };
  }

  /** An entry that the store holds now, without reading the store again. */
  #add(own: OwnEntry): void {
    const isBehind = this.#turn > this.#shown;
    this.#turn += 1;
    this.#shown = this.#turn;
    const entries = [...this.#state.entries, own].sort((a, b) => a.run - b.run);
    this.#state = { ...this.#state, entries, books: this.#books(this.#judge, entries, this.#state.skew) };
    this.#say();
    this.#keepGlances();
    this.#tellOthers();
    // a reading that was on its way is left aside for this one, and may have held something new
    if (isBehind) void this.#reload(false);
  }

  /** Keeps photos of a burst until each is put to its picture. */
  async keepLoose(job: string, photos: readonly Photo[]): Promise<"kept" | "no room"> {
    for (const photo of photos)
      if ((await this.#written(true, () => keepLoose(this.#database, job, photo))) === "no room") return "no room";
    return "kept";
  }

  /** Takes a photo of a burst that belongs to no picture here off this phone; what the office already has of it stays there. */
  async removeLoose(sha256: string): Promise<void> {
    await removeLoose(this.#database, sha256);
    await this.#reload(true);
  }

  /** Whether a photo still waits for its place, by the store itself: another page of this phone may have put it there just now. */
  async isLoose(sha256: string): Promise<boolean> {
    return (await this.#database.get("photos", sha256))?.loose === true;
  }

  /** A photo that waits belongs to another job's pictures. */
  async moveLoose(sha256: string, job: string): Promise<void> {
    await withRoom(this.#database, () => moveLoose(this.#database, sha256, job));
    await this.#reload(true);
  }

  /** `shown`: shows what was written by itself, where it can; else the store is read again. */
  async #written<T>(isLarge: boolean, write: () => Promise<T>, shown: (value: T) => boolean = () => false): Promise<T | "no room"> {
    try {
      // what is large comes after the reserve: a draft may just have used it up, and the next entries live on what it left
      if (isLarge && !(await holdReserve(this.#database))) {
        this.#change({ full: true });
        return "no room";
      }
      const value = await (isLarge ? write() : withRoom(this.#database, write));
      if (!shown(value)) await this.#reload(true);
      if (!this.#state.persisted) afterPaint(() => void this.askToPersist());
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
    await withRoom(this.#database, () => writeAbout(this.#database, "today", { ...person, day }));
    await this.#reload(true);
    this.#answerWho(true);
  }

  /** Asks on the page that is open who enters here; true once somebody was chosen. */
  askWho(): Promise<boolean> {
    this.#answerWho(false);
    this.#change({ askingWho: true });
    return new Promise((resolve) => {
      this.#whoAnswered = resolve;
    });
  }

  /** Leaves the question who enters open. */
  leaveWho(): void {
    this.#answerWho(false);
  }

  #answerWho(chosen: boolean): void {
    this.#whoAnswered?.(chosen);
    this.#whoAnswered = undefined;
    if (this.#state.askingWho) this.#change({ askingWho: false });
  }

  /** A photo's bytes, while this phone still has them. */
  async bytesOf(sha256: string): Promise<ArrayBuffer | undefined> {
    return (await this.#database.get("bytes", sha256).catch(() => undefined))?.bytes;
  }

  async smallOf(sha256: string): Promise<ArrayBuffer | undefined> {
    return (await this.#database.get("small", sha256).catch(() => undefined))?.bytes;
  }

  async keepSmall(sha256: string, bytes: ArrayBuffer): Promise<void> {
    // it can be made again
    await this.#database.put("small", { sha256, bytes }).catch(() => {});
  }

  async draft<T>(place: string): Promise<T | undefined> {
    return (await this.#database.get("drafts", place))?.value as T | undefined;
  }

  async keepDraft(place: string, value: unknown): Promise<void> {
    const database = this.#database;
    if (value === undefined) return database.delete("drafts", place);
    try {
      await withRoom(database, () => database.put("drafts", { place, value }));
    } catch (error) {
      if (!isFull(error)) throw error;
      this.#change({ full: true });
    }
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
    this.#turn += 1;
    const turn = this.#turn;
    // the one that this reading begins with: what was read without it knows no jobs, though it has come meanwhile
    const judge = this.#judge;
    const stored = await storedIn(this.#database, judge === undefined ? undefined : this.#jobs);
    // a slower reading must not put an older state over a newer one
    if (turn < this.#shown) return;
    this.#shown = turn;
    this.#jobs = stored.jobs;
    const books = this.#books(judge, stored.entries, stored.skew?.milliseconds ?? 0);
    this.#state = afterStored(this.#state, stored, books, judge !== undefined);
    this.#say();
    this.#keepGlances();
    if (tellOthers) this.#tellOthers();
  }

  #books(judge: Judge | undefined, entries: readonly OwnEntry[], skew: number): readonly Book[] {
    return judge === undefined ? [] : [...this.#jobs.values()].map((kept) => judge.book(kept, entries, skew));
  }

  #tellOthers(): void {
    if (!this.#stopped) this.#channel.postMessage("changed");
  }

  #change(some: Partial<KeepState>, without: readonly (keyof KeepState)[] = []): void {
    this.#become(changed(this.#state, some, without));
  }

  #become(state: KeepState): void {
    this.#state = state;
    this.#say();
  }

  #say(): void {
    for (const listener of this.#listeners) listener();
  }
}
