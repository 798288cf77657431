import { type Outcome, ok, type RefusalCode, refusalCodes, refuse } from "#core/outcome/index.ts";
import type { PhotoFacts, Region } from "#core/photo/index.ts";
import { photoFacts } from "#core/wire/index.ts";
import {
  issueToken,
  type MessageAnswer,
  type MessageAsked,
  type MessageService,
  type PrintAnswer,
  type PrintRequest,
  printRequest,
  TOKEN_LIFE_MS,
} from "#functions/shared/index.ts";
import type { Environment } from "../environment.ts";

export type MachineName = "media" | "print";

/** The functions that the edge asks over HTTP. Neither is ever trusted to be there. */
export interface Machines {
  /** Refuses `media-unavailable` and what media refuses. */
  readPhoto(company: string, sha256: string): Promise<Outcome<PhotoFacts>>;
  /** New renditions with these parts blurred, named by the digest. Refuses `media-unavailable` and what media refuses. */
  blurPhoto(
    company: string,
    sha256: string,
    parts: { readonly digest: string; readonly regions: readonly Region[] },
  ): Promise<Outcome<null>>;
  /** Draws the company's mark that was sent under this hash anew; its size in pixels. Refuses `media-unavailable` and what media refuses. */
  drawMark(company: string, sha256: string): Promise<Outcome<{ readonly width: number; readonly height: number }>>;
  /** Refuses `print-unavailable` and what print refuses. */
  print(request: PrintRequest): Promise<Outcome<PrintAnswer>>;
  /** Makes a message of mail, and sends it where asked. Refuses `print-unavailable` and what is refused there. */
  message(asked: MessageAsked): Promise<Outcome<MessageAnswer>>;
  mail(): Promise<Outcome<MessageService>>;
  /** Nothing when it answers, else why not. */
  down(name: MachineName): Promise<string | undefined>;
}

const READ_MS = 120_000;
const PRINT_MS = 120_000;
const HEALTH_MS = 3_000;

type Settings = Pick<Environment, "MEDIA_URL" | "PRINT_URL" | "SERVICE_SECRET">;

export function machinesAt(settings: Settings, clock: () => number): Machines {
  const addresses = { media: settings.MEDIA_URL, print: settings.PRINT_URL };
  const whyNot = (thrown: unknown): string => (thrown instanceof Error ? thrown.name : "unknown");

  async function asked<T>(name: MachineName, path: string, init: RequestInit, limitMs: number): Promise<Outcome<T>> {
    try {
      const answer = await fetch(`${addresses[name]}${path}`, { ...init, signal: AbortSignal.timeout(limitMs) });
      if (answer.ok) return ok((await answer.json()) as T);
      return refusedBy(name, answer.status, await answer.text());
    } catch (thrown) {
      return refuse(`${name}-unavailable`, name, { what: name, why: whyNot(thrown) });
    }
  }

  /** Asks media about one file of a company, with a token that is good for this file alone. */
  async function askedOfMedia<T>(path: string, company: string, sha256: string, more: object = {}): Promise<Outcome<T>> {
    const expires = clock() + TOKEN_LIFE_MS;
    const token = await issueToken(settings.SERVICE_SECRET, { audience: "media", subject: `${company}/${sha256}`, expires });
    const headers = { authorization: `Bearer ${token}`, "content-type": "application/json" };
    const body = JSON.stringify({ company, sha: sha256, ...more });
    return asked<T>("media", path, { method: "POST", headers, body }, READ_MS);
  }

  return {
    async readPhoto(company, sha256) {
      const answer = await askedOfMedia<PhotoFacts>("/read", company, sha256);
      // What is no number has become null on the way: caught here, before it is stored and told to jobs.
      if (answer.ok && !photoFacts.safeParse(answer.value).success)
        return refuse("media-unavailable", "media", { what: "media", why: "shape" });
      return answer;
    },
    async blurPhoto(company, sha256, { digest, regions }) {
      const made = await askedOfMedia("/blur", company, sha256, { digest, regions });
      return made.ok ? ok(null) : made;
    },
    drawMark: (company, sha256) => askedOfMedia("/mark", company, sha256),
    async print(request) {
      const { body, headers } = await printRequest(settings.SERVICE_SECRET, request, clock());
      return asked<PrintAnswer>("print", "/print", { method: "POST", headers, body }, PRINT_MS);
    },
    async message(asking) {
      const { body, headers } = await printRequest(settings.SERVICE_SECRET, asking, clock());
      return asked<MessageAnswer>("print", "/message", { method: "POST", headers, body }, PRINT_MS);
    },
    mail: () => asked<MessageService>("print", "/message", {}, HEALTH_MS),
    async down(name) {
      try {
        const answer = await fetch(`${addresses[name]}/health`, { signal: AbortSignal.timeout(HEALTH_MS) });
        await answer.body?.cancel();
        return answer.ok ? undefined : `status ${answer.status}`;
      } catch (thrown) {
        return whyNot(thrown);
      }
    },
  };
}

/** A refusal of another function by its code; anything else that is no good answer means that it is not there. */
function refusedBy(name: MachineName, status: number, text: string): Outcome<never> {
  try {
    const { code, place, figures } = JSON.parse(text) as { code?: unknown; place?: unknown; figures?: Record<string, string | number> };
    const known = refusalCodes.find((one): one is RefusalCode => one === code);
    if (known && known !== "service-token") return refuse(known, typeof place === "string" ? place : name, figures ?? {});
  } catch {
    // no problem document: told below by its status
  }
  return refuse(`${name}-unavailable`, name, { what: name, why: `status ${status}` });
}
