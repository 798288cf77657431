import type { PersonRow } from "../adapters/companies.ts";
import { sha256Hex } from "../chance.ts";
import { sessionCookie, tokenIn } from "../cookie.ts";
import type { Services } from "../services.ts";
import { behind } from "../shards/index.ts";
import { deviceOf } from "./device.ts";
import { lifeOf, type Way } from "./lives.ts";

interface Entering {
  readonly company: string;
  readonly person: Pick<PersonRow, "id" | "role">;
  readonly way: Way;
  readonly passkey?: string;
}

/** Begins a session and answers its cookie. The token is always a new one, and a session that this browser had ends. */
export async function entered(services: Services, request: Request, entering: Entering, now: number): Promise<string> {
  const { company, person, way, passkey } = entering;
  const before = tokenIn(request);
  if (before !== undefined) {
    // perhaps of another company, in another shard
    const former = await behind(services, await sha256Hex(before));
    const had = await former.sessions.find(before, now);
    if (had !== undefined && had !== "ended") await former.sessions.end(had.hash, now);
  }
  const device = deviceOf(request);
  const own = { company, person: person.id, role: person.role, way, device };
  const token = await services.sessions.begin(passkey === undefined ? own : { ...own, passkey }, now);
  return sessionCookie(token, request, lifeOf(person.role).ends);
}
