import { createHash, randomBytes } from "node:crypto";
import { type Json, type SealedEntry, seal } from "#core/ledger/index.ts";
import { digest } from "#infra/node-digest.ts";
import ten from "../samples/sheets/ten-items.json" with { type: "json" };

/** What tests of the edge share: a client that keeps a cookie, and a phone that seals entries. */

export const newId = (): string => randomBytes(12).toString("hex");
export const salt = (): string => randomBytes(32).toString("hex");
export const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

// biome-ignore lint/suspicious/noExplicitAny: what the edge answered is what a test looks at
export type Loose = any;

export interface Reply {
  readonly status: number;
  readonly headers: Headers;
  readonly body: Loose;
  readonly bytes: Uint8Array;
}

export interface Ask {
  readonly json?: unknown;
  readonly bytes?: Uint8Array | ReadableStream<Uint8Array>;
  readonly headers?: Readonly<Record<string, string>>;
}

export class Client {
  readonly edge: string;
  cookie = "";

  constructor(edge: string) {
    this.edge = edge;
  }

  async ask(method: string, path: string, { json, bytes, headers = {} }: Ask = {}): Promise<Reply> {
    const answer = await fetch(`${this.edge}${path}`, {
      method,
      redirect: "manual",
      headers: {
        connection: "close",
        "x-asburied": "1",
        ...(this.cookie ? { cookie: this.cookie } : {}),
        ...(json === undefined ? {} : { "content-type": "application/json" }),
        ...headers,
      },
      ...(json === undefined ? {} : { body: JSON.stringify(json) }),
      ...(bytes === undefined ? {} : { body: bytes as BodyInit, duplex: "half" }),
    } as RequestInit);
    const got = new Uint8Array(await answer.arrayBuffer());
    const type = answer.headers.get("content-type") ?? "";
    return {
      status: answer.status,
      headers: answer.headers,
      bytes: got,
      body: type.includes("json") ? JSON.parse(new TextDecoder().decode(got)) : undefined,
    };
  }

  get = (path: string): Promise<Reply> => this.ask("GET", path);
  post = (path: string, json?: unknown): Promise<Reply> => this.ask("POST", path, json === undefined ? {} : { json });

  async signIn(link: string): Promise<this> {
    const answer = await this.ask("GET", link);
    if (answer.status !== 303) throw new Error(`signing in answered ${answer.status}`);
    this.cookie = (answer.headers.get("set-cookie") ?? "").split(";")[0] ?? "";
    return this;
  }
}

export interface Company {
  readonly company: string;
  readonly owner: Client;
  readonly office: Client;
  readonly crew: Client;
  readonly people: { readonly owner: string; readonly office: string; readonly crew: string };
}

/** A company with one person of each role, signed in. */
export async function newCompany(edge: string, operatorKey: string, id?: string): Promise<Company> {
  const nobody = new Client(edge);
  const made = await nobody.ask("POST", "/api/companies", {
    json: {
      ...(id === undefined ? {} : { id }),
      name: "Stillwater Yard Works",
      zone: "America/New_York",
      units: "inch",
      language: "en",
      owner: { name: "Robin Vale" },
    },
    headers: { authorization: `Operator ${operatorKey}` },
  });
  if (made.status !== 201) throw new Error(`founding answered ${made.status} ${JSON.stringify(made.body)}`);
  const owner = await new Client(edge).signIn(made.body.ownerLink);
  const add = async (name: string, role: string) => {
    const { person } = (await owner.post("/api/people", { name, role })).body;
    const { link } = (await owner.post(`/api/people/${person}/links`)).body;
    return { person, client: await new Client(edge).signIn(link) };
  };
  const [office, crew] = [await add("Kim Alder", "office"), await add("Sam Birch", "crew")];
  const me = (await owner.get("/api/session")).body.person;
  return {
    company: made.body.company,
    owner,
    office: office.client,
    crew: crew.client,
    people: { owner: me, office: office.person, crew: crew.person },
  };
}

/** A phone: seals entries with a running number of its own. */
export class Phone {
  readonly id = newId();
  run = 0;

  async entry(
    job: string,
    person: string,
    kind: string,
    what: Json,
    about: { made?: number; who?: Json; id?: string } = {},
  ): Promise<SealedEntry> {
    const { made = Date.UTC(2026, 4, 4, 12, this.run), who, id = newId() } = about;
    const sealed = await seal(digest, {
      job,
      id,
      kind,
      author: { person, phone: this.id },
      run: this.run,
      made,
      contents: who === undefined ? { what } : { what, who },
      salts: who === undefined ? { what: salt() } : { what: salt(), who: salt() },
    });
    if (!sealed.ok) throw new Error(`not sealed: ${sealed.refusal.code} at ${sealed.refusal.place}`);
    this.run += 1;
    return sealed.value;
  }
}

export const SENT = Date.UTC(2026, 4, 4, 18);
export const batchOf = (...entries: unknown[]) => ({ sent: SENT, entries });

export const tenItems = ten as unknown as Json;

/** A job that follows the sheet of ten items, opened by the office. */
export async function newJob(
  company: Company,
  id = newId(),
): Promise<{ readonly job: string; readonly phone: Phone; readonly sheet: string }> {
  const phone = new Phone();
  const sheet = (await company.office.post("/api/company/sheets", tenItems)).body;
  const { office } = company.people;
  const opened = await phone.entry(id, office, "job-opened", {
    title: "Elm Street 4",
    zone: "America/New_York",
    language: "en",
    units: "inch",
  });
  const { name, number, digest: of } = sheet;
  const took = await phone.entry(id, office, "version-taken-over", { thing: "sheet", name, number, digest: of });
  const answer = await company.office.post("/api/jobs", batchOf(opened, took));
  if (answer.status !== 201 || answer.body.answers.some((one: { outcome?: string }) => one.outcome === undefined))
    throw new Error(`opening answered ${answer.status} ${JSON.stringify(answer.body)}`);
  return { job: id, phone, sheet: of };
}

export async function until<T>(ask: () => Promise<T>, good: (value: T) => boolean, limitMs = 20_000): Promise<T> {
  const end = Date.now() + limitMs;
  for (;;) {
    const value = await ask();
    if (good(value)) return value;
    if (Date.now() > end) throw new Error(`not in time: ${JSON.stringify(value).slice(0, 400)}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}
