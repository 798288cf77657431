import type { Json, SealedEntry } from "#core/ledger/index.ts";
import type { Passed } from "../../../src/screens/field/keep/passed.ts";
import { sendAll } from "../../../src/screens/field/keep/send.ts";
import type { OwnEntry, OwnPhoto } from "../../../src/screens/field/keep/shapes.ts";
import { Phone, sha256 } from "../../helpers/edge.ts";
import { pause } from "../waiting.ts";
import { type Ground, onGround } from "./ground.ts";
import { memoryDatabase } from "./memory-database.ts";

/** What the phones were told is kept, by which the stack is measured. */
export interface Told {
  /** The round that is run now. */
  round: number;
  readonly entries: { readonly round: number; readonly job: string; readonly number: number; readonly entry: SealedEntry }[];
  /** By hash. */
  readonly photos: Map<string, { readonly round: number; readonly bytes: number; readonly damaged: boolean }>;
  /** What went wrong that a phone can see: a good entry refused, a request that hung. */
  readonly problems: string[];
  /** Passes of sending that ended without everything being taken. */
  unanswered: number;
}

/** A crew's phone: its own sending code over a store in memory; what is not acknowledged is kept and sent again. */
export class SimulatedPhone {
  readonly ground: Ground;
  readonly #person: string;
  readonly #told: Told;
  readonly #database = memoryDatabase();
  readonly #hand = new Phone();
  readonly #damaged = new Set<string>();
  #stopped = false;

  constructor(ground: Ground, person: string, told: Told) {
    this.ground = ground;
    this.#person = person;
    this.#told = told;
  }

  async enter(job: string, kind: string, what: Json): Promise<void> {
    const { run } = this.#hand;
    const made = Date.now() + this.ground.clockAhead;
    const entry = await this.#hand.entry(job, this.#person, kind, what, { made });
    const own = { run, job, id: entry.sealed.id, entry, standing: "not sent" } as unknown as OwnEntry;
    await this.#database.put("entries", own);
  }

  /** A picture: the entry that names it and its bytes, kept together. */
  async take(job: string, bytes: Uint8Array<ArrayBuffer>, damaged: boolean): Promise<void> {
    const name = sha256(bytes);
    if (damaged) this.#damaged.add(name);
    await this.#database.put("bytes", { sha256: name, bytes: bytes.buffer });
    const taken = Date.now() + this.ground.clockAhead;
    const photo = { sha256: name, job, run: this.#hand.run, type: "image/jpeg", bytes: bytes.length, taken, standing: "not sent" };
    await this.#database.put("photos", photo as OwnPhoto);
    await this.enter(job, "picture-taken", { item: "footing-seen", photo: name, bytes: bytes.length, type: "image/jpeg" });
  }

  /** How many entries and photos are not acknowledged. */
  async waiting(): Promise<number> {
    const [entries, photos] = await Promise.all([this.#database.getAll("entries"), this.#database.getAll("photos")]);
    return entries.length + photos.length;
  }

  /** Sends whatever waits, again and again, until it is stopped. */
  async work(): Promise<void> {
    while (!this.#stopped) {
      if ((await this.waiting()) === 0) {
        await pause(25);
        continue;
      }
      const passed: Passed = await onGround(this.ground, () => sendAll(this.#database, () => undefined));
      await this.#collect();
      if (passed === "all sent") continue;
      this.#told.unanswered += 1;
      if (passed !== "away") this.#told.problems.push(`round ${this.#told.round}: sending ended with '${passed}'`);
      await pause(400);
    }
  }

  stop(): void {
    this.#stopped = true;
  }

  /** Writes down what is acknowledged, and lets go of it as a phone does. */
  async #collect(): Promise<void> {
    for (const { run, job, entry, standing, number, problem } of await this.#database.getAll("entries")) {
      if (standing === "not sent") continue;
      if (standing === "refused" || number === undefined)
        this.#told.problems.push(`round ${this.#told.round}: an entry was refused: ${problem?.code}`);
      else this.#told.entries.push({ round: this.#told.round, job, number, entry: entry as unknown as SealedEntry });
      await this.#database.delete("entries", run);
    }
    for (const { sha256: name, bytes, standing, problem } of await this.#database.getAll("photos")) {
      if (standing === "not sent") continue;
      if (standing !== "acknowledged") this.#told.problems.push(`round ${this.#told.round}: a photo is ${standing}: ${problem?.code}`);
      else this.#told.photos.set(name, { round: this.#told.round, bytes, damaged: this.#damaged.has(name) });
      await this.#database.delete("photos", name);
    }
  }
}
