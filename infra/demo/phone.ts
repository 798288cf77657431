import { createHash, randomBytes } from "node:crypto";
import { clearance, type Entry, findings, type JobLedger, jobState, RULES } from "#core/job/index.ts";
import { type Body, type Json, type Sealed, seal } from "#core/ledger/index.ts";
import { makeSayer } from "#core/record/index.ts";
import { digest } from "../node-digest.ts";
import { type Reference, ZONE } from "./script.ts";

export interface SentEntry {
  readonly sealed: Sealed;
  readonly body: Body;
  readonly digest: string;
}

export const sha256Hex = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
export const randomId = (): string => randomBytes(16).toString("hex");
const salt = (): string => randomBytes(32).toString("hex");

/** What a phone holds of one job: the entries it knows, and the company's things that the job took over. */
export interface JobBook {
  readonly job: string;
  readonly versions: JobLedger["versions"];
  readonly entries: Entry[];
  /** Not sent yet. */
  readonly outbox: SentEntry[];
}

export const openBook = (job: string, versions: JobLedger["versions"]): JobBook => ({ job, versions, entries: [], outbox: [] });

export interface Words {
  readonly what: Json;
  readonly who?: Json;
  readonly where?: Json;
}

/** A phone or desk: seals what one person enters, and works out what the covering shows, without any signal. */
export class Phone {
  readonly person: string;
  readonly #phone = randomId();
  #run = 0;

  constructor(person: string) {
    this.person = person;
  }

  async enter(book: JobBook, kind: string, made: number, words: Words): Promise<Reference> {
    const id = randomId();
    const author = { person: this.person, phone: this.#phone };
    const contents = { what: words.what, ...(words.who ? { who: words.who } : {}), ...(words.where ? { where: words.where } : {}) };
    const salts = Object.fromEntries(Object.keys(contents).map((part) => [part, salt()]));
    const run = this.#run++;
    const sealed = await seal(digest, { job: book.job, id, kind, author, run, made, contents, salts });
    if (!sealed.ok) throw new Error(`${kind} could not be sealed: ${sealed.refusal.code} at ${sealed.refusal.place}`);
    book.outbox.push(sealed.value);
    book.entries.push({ id, digest: sealed.value.digest, kind, author, run, made, ...contents });
    return { id, digest: sealed.value.digest };
  }

  /** Says that a covering is done, with the clearance that stood on the phone at that moment and all that it rested on. */
  async cover(book: JobBook, covering: string, made: number): Promise<Reference> {
    const state = jobState({ entries: book.entries, versions: book.versions });
    if (state.sheet === undefined || state.sheetDigest === undefined) throw new Error("the phone has no tolerance sheet");
    const all = findings(state);
    const shown = clearance(state, all, covering, made);
    const sayer = makeSayer({ language: "en", units: "inch", zone: ZONE, sheet: state.sheet });
    const digests = new Map(book.entries.map((entry) => [entry.id, entry.digest]));
    const rested = new Set(all.filter((finding) => finding.holds === covering).flatMap((finding) => finding.entries));
    return this.enter(book, "covered", made, {
      what: {
        covering,
        shown: shown.state,
        lines: shown.lines.map((line) => sayer.line(line)),
        sheet: state.sheetDigest,
        rules: RULES,
        restedOn: [...rested].map((id) => ({ id, digest: digests.get(id) ?? "" })),
        at: made,
      },
    });
  }
}
