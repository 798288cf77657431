import type { JobBook, SentEntry } from "./phone.ts";

/** As many entries as the demo sends at once. */
const BATCH = 100;
const TRIES = 5;

interface Sending {
  readonly method?: string;
  readonly json?: unknown;
  readonly bytes?: Uint8Array<ArrayBuffer>;
  readonly headers?: Readonly<Record<string, string>>;
}

/** One signed-in device, or the operator before anybody is signed in, over the public API and nothing else. */
export class Client {
  readonly #edge: string;
  #cookie = "";

  constructor(edge: string) {
    this.#edge = edge;
  }

  /** What its session is known by; empty before it signed in. */
  get cookie(): string {
    return this.#cookie;
  }

  async #fetch(path: string, { method = "GET", json, bytes, headers = {} }: Sending): Promise<Response> {
    const body = json === undefined ? bytes : JSON.stringify(json);
    const init: RequestInit = {
      method,
      redirect: "manual",
      headers: {
        connection: "close",
        ...(this.#cookie === "" ? {} : { cookie: this.#cookie }),
        ...(method === "GET" ? {} : { "x-asburied": "1" }),
        ...(json === undefined ? {} : { "content-type": "application/json" }),
        ...headers,
      },
      ...(body === undefined ? {} : { body }),
    };
    for (let tried = 1; ; tried += 1) {
      try {
        return await fetch(`${this.#edge}${path}`, init);
      } catch (error) {
        // A phone tries again; what was taken the first time is answered 'already there'.
        if (tried >= TRIES) throw error;
        await new Promise((resolve) => setTimeout(resolve, 100 * tried));
      }
    }
  }

  async #answered(path: string, sending: Sending): Promise<Response> {
    const response = await this.#fetch(path, sending);
    if (response.ok) return response;
    throw new Error(`${sending.method ?? "GET"} ${path} answered ${response.status}: ${(await response.text()).slice(0, 600)}`);
  }

  /** Takes a sign-in link, relative or whole; the session's cookie is kept. */
  async signIn(link: string): Promise<this> {
    const { pathname } = new URL(link, this.#edge);
    const response = await this.#fetch(pathname, {});
    const cookie = response.headers.getSetCookie().find((one) => one.startsWith("session="));
    await response.arrayBuffer();
    if (response.status !== 303 || cookie === undefined) throw new Error(`signing in answered ${response.status}`);
    this.#cookie = cookie.split(";")[0] ?? "";
    return this;
  }

  async get<T>(path: string): Promise<T> {
    return (await (await this.#answered(path, {})).json()) as T;
  }

  async bytes(path: string): Promise<Uint8Array> {
    return new Uint8Array(await (await this.#answered(path, {})).arrayBuffer());
  }

  async send<T>(method: "POST" | "PUT", path: string, json?: unknown, headers: Readonly<Record<string, string>> = {}): Promise<T> {
    return (await (await this.#answered(path, { method, headers, ...(json === undefined ? {} : { json }) })).json()) as T;
  }

  async putFile<T>(path: string, bytes: Uint8Array<ArrayBuffer>, type: string): Promise<T> {
    return (await (await this.#answered(path, { method: "PUT", bytes, headers: { "content-type": type } })).json()) as T;
  }

  async postFile<T>(path: string, bytes: Uint8Array<ArrayBuffer>, type: string): Promise<T> {
    return (await (await this.#answered(path, { method: "POST", bytes, headers: { "content-type": type } })).json()) as T;
  }

  async putPhoto(sha256: string, bytes: Uint8Array<ArrayBuffer>): Promise<void> {
    const response = await this.#answered(`/api/photos/${sha256}`, { method: "PUT", bytes, headers: { "content-type": "image/jpeg" } });
    await response.arrayBuffer();
  }

  /** Sends what a book still holds back, `path` for the job's opening or its later entries; none may be refused. */
  async empty({ outbox, job }: JobBook, opening = false): Promise<number> {
    const waiting = outbox.splice(0);
    for (let at = 0; at < waiting.length; at += BATCH) {
      const entries: SentEntry[] = waiting.slice(at, at + BATCH);
      const path = opening && at === 0 ? "/api/jobs" : `/api/jobs/${job}/entries`;
      const { answers } = await this.send<{
        answers: readonly { id: string; refusal?: { code: string; detail: string; place?: string } }[];
      }>("POST", path, { sent: Date.now(), entries });
      const refused = answers.find((answer) => answer.refusal);
      if (refused?.refusal) {
        const kind = entries.find(({ sealed }) => sealed.id === refused.id)?.sealed.kind;
        throw new Error(`${kind} was refused: ${refused.refusal.code} at ${refused.refusal.place}: ${refused.refusal.detail}`);
      }
    }
    return waiting.length;
  }
}
