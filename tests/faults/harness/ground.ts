import { AsyncLocalStorage } from "node:async_hooks";

/** What stands under a phone's own code in the place of a browser: its address and cookie, its clock, its time limit. */
export interface Ground {
  readonly edge: string;
  cookie: string;
  /** Milliseconds that its clock is ahead. */
  clockAhead: number;
  /** Whether a page of it sends already. */
  sending: boolean;
  /** Told of a request that was neither answered nor ended within the limit. */
  readonly hung: (what: string) => void;
}

/** Every request of a phone is answered or ends within this. */
export const REQUEST_LIMIT_MS = 45_000;

const phones = new AsyncLocalStorage<Ground>();
const current = (): Ground => {
  const ground = phones.getStore();
  if (ground === undefined) throw new Error("no phone is at work here");
  return ground;
};

/** Runs a phone's own code on its ground. */
export const onGround = <T>(ground: Ground, work: () => Promise<T>): Promise<T> => phones.run(ground, work);

type Fetch = typeof fetch;

/** Asks as this phone does; counts what hangs. */
async function asked(real: Fetch, path: string, init: RequestInit): Promise<Response> {
  const ground = current();
  const limit = AbortSignal.timeout(REQUEST_LIMIT_MS);
  try {
    const headers = { ...(init.headers as Record<string, string>), connection: "close", cookie: ground.cookie };
    const signal = init.signal ? AbortSignal.any([init.signal, limit]) : limit;
    const answer = await real(`${ground.edge}${path}`, { ...init, headers, redirect: "manual", signal });
    const bytes = await answer.arrayBuffer();
    const cookie = answer.headers.getSetCookie()[0]?.split(";")[0];
    if (cookie !== undefined && answer.ok) ground.cookie = cookie;
    return new Response(bytes.byteLength > 0 ? bytes : null, { status: answer.status, headers: answer.headers });
  } catch (thrown) {
    if (limit.aborted) ground.hung(`${init.method ?? "GET"} ${path}`);
    throw thrown;
  }
}

/** As much of XMLHttpRequest as sending a photo asks for. */
const requestOver = (real: Fetch) =>
  class {
    responseType = "";
    responseText = "";
    status = 0;
    timeout = 0;
    readonly upload: { onprogress?: (event: { loaded: number; total: number }) => void } = {};
    onload?: () => void;
    onerror?: () => void;
    ontimeout?: () => void;
    onabort?: () => void;
    #method = "";
    #path = "";
    readonly #headers: Record<string, string> = {};

    open(method: string, path: string): void {
      this.#method = method;
      this.#path = path;
    }

    setRequestHeader(name: string, value: string): void {
      this.#headers[name] = value;
    }

    send(bytes: ArrayBuffer): void {
      asked(real, this.#path, { method: this.#method, headers: this.#headers, body: bytes })
        .then(async (answer) => {
          this.status = answer.status;
          this.responseText = await answer.text();
          this.onload?.();
        })
        .catch(() => this.onerror?.());
    }
  };

/** Puts what the phones' code calls in a browser into its place; gives the way back. */
export function layGround(): () => void {
  const real = globalThis.fetch;
  const now = Date.now;
  const before = new Map(["fetch", "XMLHttpRequest", "navigator"].map((name) => [name, Object.getOwnPropertyDescriptor(globalThis, name)]));
  const put = (name: string, value: unknown) => Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
  put("fetch", (path: string, init: RequestInit = {}) => (phones.getStore() === undefined ? real(path, init) : asked(real, path, init)));
  put("XMLHttpRequest", requestOver(real));
  const request = async (_: string, __: object, work: (lock: object | null) => unknown) => {
    const ground = current();
    if (ground.sending) return work(null);
    ground.sending = true;
    try {
      return await work({});
    } finally {
      ground.sending = false;
    }
  };
  put("navigator", { locks: { request } });
  Date.now = () => now() + (phones.getStore()?.clockAhead ?? 0);
  return () => {
    Date.now = now;
    for (const [name, descriptor] of before) {
      if (descriptor === undefined) Reflect.deleteProperty(globalThis, name);
      else Object.defineProperty(globalThis, name, descriptor);
    }
  };
}
