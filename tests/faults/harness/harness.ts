import type { Stack } from "#infra/local/index.ts";
import { Client, type Company, newJob } from "../../helpers/edge.ts";
import type { KeptRecord } from "../phone-that-keeps.ts";
import { limited, pause, seen } from "../waiting.ts";
import { Breaking, type Broke } from "./breaking.ts";
import { jobFaults, photoFaults, recordFaults, settled } from "./checks.ts";
import type { Round } from "./draws.ts";
import type { Ground } from "./ground.ts";
import { SimulatedPhone, type Told } from "./phone.ts";
import { cutOff, pictureOf } from "./pictures.ts";
import type { StoreBetween } from "./store-between.ts";

/** After so many rounds the phones go on at other jobs. */
const PERIOD = 10;
const JOBS_AT_A_TIME = 2;
/** Photos that are compared at once. */
const AT_ONCE = 8;
/** Once nothing breaks any more, everything is up and all is sent within this. */
export const ROUND_LIMIT_MS = 60_000;

/** The stack, its phones and what they have been told. */
export class Harness {
  readonly told: Told = { round: 0, entries: [], photos: new Map(), problems: [], unanswered: 0 };
  readonly records: KeptRecord[] = [];
  readonly jobs: string[] = [];
  readonly broke: Broke[] = [];
  readonly #seed: number;
  readonly #stack: Stack;
  readonly #company: Company;
  readonly #phones: readonly SimulatedPhone[];
  readonly #breaking: Breaking;

  constructor(seed: number, stack: Stack, between: StoreBetween, company: Company, grounds: readonly Omit<Ground, "hung">[]) {
    this.#seed = seed;
    this.#stack = stack;
    this.#company = company;
    const hung = (what: string): void => void this.told.problems.push(`round ${this.told.round}: ${what} hung`);
    this.#phones = grounds.map((ground) => new SimulatedPhone({ ...ground, hung }, company.people.crew, this.told));
    this.#breaking = new Breaking(stack, between, this.#phones);
  }

  /** Lets the phones send until `stop`. */
  work(): Promise<unknown> {
    return Promise.all(this.#phones.map((phone) => phone.work()));
  }

  stop(): void {
    for (const phone of this.#phones) phone.stop();
  }

  async round(round: Round, first: boolean): Promise<string> {
    this.told.round = round.number;
    if (first || round.number % PERIOD === 1) for (let i = 0; i < JOBS_AT_A_TIME; i += 1) this.jobs.push((await newJob(this.#company)).job);
    const current = this.jobs.slice(-JOBS_AT_A_TIME);
    const before = [this.told.entries.length, this.told.photos.size, this.records.length, this.told.unanswered] as const;
    const issuing = round.issues ? this.#issue(current[0] ?? "") : Promise.resolve();
    const working = [this.#enter(round, current), this.#picture(round, current)];
    const broke = await Promise.all(round.faults.map((fault) => this.#breaking.run(fault)));
    this.broke.push(...broke);
    await Promise.all(working);
    await this.#recovered();
    await limited("the record", issuing, ROUND_LIMIT_MS);
    const { entries, photos, unanswered } = this.told;
    const more = [entries.length - before[0], photos.size - before[1], this.records.length - before[2], unanswered - before[3]];
    return `${broke.map(({ words }) => words).join("; ")} | acknowledged ${more[0]} entries, ${more[1]} photos, ${more[2]} records; ${more[3]} sendings repeated`;
  }

  async #enter(round: Round, jobs: readonly string[]): Promise<void> {
    await Promise.all(
      this.#phones.map(async (phone, i) => {
        for (let count = round.entries[i] ?? 0; count > 0; count -= 1) {
          await pause((i * 37 + count * 211) % 700);
          await phone.enter(jobs[i % jobs.length] ?? "", "note-for-record", { text: `round ${round.number}, phone ${i}, ${count}` });
        }
      }),
    );
  }

  async #picture(round: Round, jobs: readonly string[]): Promise<void> {
    for (const [i, number] of round.photographers.entries()) {
      const whole = await pictureOf(this.#seed, round.number * 8 + i);
      const damaged = i >= round.photographers.length - round.damaged;
      const bytes = damaged ? cutOff(whole, 0.4) : whole;
      const also = round.shared && i === 0 ? [(number + 1) % this.#phones.length] : [];
      for (const one of [number, ...also]) await this.#phones[one]?.take(jobs[one % jobs.length] ?? "", new Uint8Array(bytes), damaged);
      await pause(120);
    }
  }

  async #issue(job: string): Promise<void> {
    await seen(
      "a record",
      async () => {
        const asked = this.#company.office.post(`/api/jobs/${job}/records`, { edition: "company" });
        const reply = await limited(
          "issuing",
          asked.catch(() => undefined),
          ROUND_LIMIT_MS,
        );
        if (reply === undefined || reply.status >= 500) return pause(200).then(() => undefined);
        if (reply.status !== 201) throw new Error(`issuing answered ${reply.status} ${JSON.stringify(reply.body)}`);
        const { record, version, sha256, bytes } = reply.body;
        this.records.push({ job, record, version, sha256, bytes });
        return true;
      },
      ROUND_LIMIT_MS,
    );
  }

  /** Every part answers again. */
  async ready(): Promise<void> {
    const nobody = new Client(this.#stack.edge);
    const isReady = async () => (await limited("readiness", nobody.get("/api/ready"), 15_000).catch(() => undefined))?.status === 200;
    await seen("every part's answer", async () => ((await isReady()) ? true : pause(50).then(() => undefined)), ROUND_LIMIT_MS);
  }

  /** The edge answers again, and all that the phones keep has been taken; media and print may still be on their way. */
  async #recovered(): Promise<void> {
    const cleared = async () =>
      this.#breaking.clear().then(
        () => true as const,
        () => undefined,
      );
    await seen("the edge without orders", cleared, ROUND_LIMIT_MS);
    const waiting = async () => (await Promise.all(this.#phones.map((phone) => phone.waiting()))).reduce((sum, one) => sum + one, 0);
    await seen("all that the phones keep", async () => ((await waiting()) === 0 ? true : pause(20).then(() => undefined)), ROUND_LIMIT_MS);
  }

  /** Compares all that was acknowledged with what is there. */
  async compare(): Promise<readonly string[]> {
    const { office } = this.#company;
    await this.ready();
    const wrong = [...(await settled(this.#stack.directory, () => this.#breaking.hurry()))];
    for (const job of this.jobs) wrong.push(...(await jobFaults(office, job, this.told)));
    const photos = [...this.told.photos.keys()];
    for (let i = 0; i < photos.length; i += AT_ONCE) {
      const found = await Promise.all(photos.slice(i, i + AT_ONCE).map((sha) => photoFaults(office, sha, this.told)));
      wrong.push(...found.flat());
    }
    for (const record of this.records) wrong.push(...(await recordFaults(office, record)));
    return wrong;
  }
}
