import type { Json, SealedEntry } from "#core/ledger/index.ts";
import { batchOf, type Client, type Company, type Loose, Phone, type Reply, sha256 } from "../helpers/edge.ts";
import { limited, pause } from "./waiting.ts";

/** An entry that the edge has acknowledged. */
export interface KeptEntry {
  readonly job: string;
  readonly number: number;
  readonly entry: SealedEntry;
}

export interface KeptRecord {
  readonly job: string;
  readonly record: string;
  readonly version: number;
  readonly sha256: string;
  readonly bytes: number;
}

/** All that was ever acknowledged, by which the stack is measured afterwards. */
export interface Acknowledged {
  readonly entries: KeptEntry[];
  readonly photos: Map<string, Uint8Array>;
  readonly records: KeptRecord[];
}

/** What an answer acknowledges; undefined when it acknowledges nothing and is to be asked again. */
const taken = (what: string, reply: Reply | undefined): Reply | undefined => {
  if (reply === undefined || reply.status >= 500) return undefined;
  if (reply.status >= 400) throw new Error(`${what} answered ${reply.status} ${JSON.stringify(reply.body)}`);
  return reply;
};

/** Sends like a phone: what is not acknowledged is kept and sent again, what is acknowledged is written down. */
export class PhoneThatKeeps {
  readonly #company: Company;
  readonly acknowledged: Acknowledged = { entries: [], photos: new Map(), records: [] };
  /** Answers that never came, and entries that were there although they had not been acknowledged. */
  unanswered = 0;
  recordsUnanswered = 0;
  thereAlready = 0;

  constructor(company: Company) {
    this.#company = company;
  }

  get crew(): Client {
    return this.#company.crew;
  }

  async #until(what: string, ask: () => Promise<Reply>): Promise<Reply> {
    const end = Date.now() + 40_000;
    for (;;) {
      const reply = taken(
        what,
        await limited(
          what,
          ask().catch(() => undefined),
        ),
      );
      if (reply) return reply;
      this.unanswered += 1;
      if (Date.now() > end) throw new Error(`${what} was not acknowledged within 40 s`);
      await pause(100);
    }
  }

  async enter(job: string, phone: Phone, kind: string, what: Json): Promise<KeptEntry> {
    const entry = await phone.entry(job, this.#company.people.crew, kind, what);
    const { body } = await this.#until(kind, () => this.crew.post(`/api/jobs/${job}/entries`, batchOf(entry)));
    const [answer] = body.answers as readonly Loose[];
    if (typeof answer?.number !== "number") throw new Error(`${kind} was refused: ${JSON.stringify(answer)}`);
    if (answer.outcome === "already there") this.thereAlready += 1;
    const kept = { job, number: answer.number, entry };
    this.acknowledged.entries.push(kept);
    return kept;
  }

  /** `clients` phones at once, each with so many entries one after another. `told` hears of every acknowledged one. */
  async enterMany(job: string, clients: number, each: number, told: () => void = () => {}): Promise<void> {
    await Promise.all(
      Array.from({ length: clients }, async (_, client) => {
        const phone = new Phone();
        for (let i = 0; i < each; i += 1) {
          await this.enter(job, phone, "note-for-record", { text: `phone ${client}, note ${i}` });
          told();
        }
      }),
    );
  }

  async picture(job: string, phone: Phone, bytes: Uint8Array): Promise<void> {
    await this.enter(job, phone, "picture-taken", {
      item: "footing-seen",
      photo: sha256(bytes),
      bytes: bytes.length,
      type: "image/jpeg",
    });
  }

  /** Only the bytes. */
  async upload(bytes: Uint8Array): Promise<void> {
    const sha = sha256(bytes);
    await this.#until(`photo ${sha.slice(0, 8)}`, () => this.crew.ask("PUT", `/api/photos/${sha}`, { bytes }));
    this.acknowledged.photos.set(sha, bytes);
  }

  /** One try: true when the record was acknowledged. */
  async issueOnce(job: string): Promise<boolean> {
    const asked = this.#company.office.post(`/api/jobs/${job}/records`, { edition: "company" }).catch(() => undefined);
    const reply = taken("issuing", await limited("issuing", asked, 40_000));
    if (!reply) {
      this.recordsUnanswered += 1;
      return false;
    }
    const { record, version, sha256: digest, bytes } = reply.body;
    this.acknowledged.records.push({ job, record, version, sha256: digest, bytes });
    return true;
  }

  async issue(job: string): Promise<void> {
    const end = Date.now() + 40_000;
    while (!(await this.issueOnce(job))) {
      if (Date.now() > end) throw new Error("no record was issued within 40 s");
      await pause(100);
    }
  }
}
