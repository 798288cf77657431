import type { Session } from "../adapters/sessions.ts";

/** How long an isolate goes by what it was told of a session; what is written so is written only while it still holds (own). */
const KNOWN_MS = 60_000;
const MOST = 2_000;

/** Sessions with the people of their company, as this isolate was told of them last. Only a speed-up: nobody is let in by it. */
export class KnownSessions {
  readonly #known = new Map<string, { readonly session: Session; readonly until: number }>();

  get(token: string, now: number): Session | undefined {
    const one = this.#known.get(token);
    return one !== undefined && now < one.until ? one.session : undefined;
  }

  put(session: Session, now: number): void {
    this.#known.delete(session.token);
    this.#known.set(session.token, { session, until: now + KNOWN_MS });
    // those that were put first are over first
    for (const [oldest, { until }] of this.#known) {
      if (this.#known.size <= MOST && now < until) break;
      this.#known.delete(oldest);
    }
  }
}
