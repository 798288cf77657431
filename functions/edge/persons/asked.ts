import { type Outcome, ok, refuse } from "#core/outcome/index.ts";
import { dayAt } from "#core/warranty/index.ts";
import type { PersonRequest } from "#core/wire/index.ts";
import type { Call } from "../routes/route.ts";
import { type Found, foundOf, soughtOf } from "./found.ts";
import { requestsOf } from "./requests.ts";

/** Today where the company is. */
export async function todayOf({ services, session, now }: Pick<Call, "services" | "session" | "now">) {
  const own = await services.companies.get(session.company);
  return dayAt(now, own?.zone ?? "UTC");
}

/** The request that the address names. Refuses `person-request-unknown`. */
export async function requestNamed(call: Call): Promise<Outcome<PersonRequest>> {
  const { services, session, parameters } = call;
  const requests = await requestsOf(services, session.company, await todayOf(call));
  const found = requests.find(({ request }) => request === parameters.request);
  return found ? ok(found) : refuse("person-request-unknown", "request", {});
}

/** What is found of the one who asks. */
export const foundFor = (
  { services, session }: Pick<Call, "services" | "session">,
  request: PersonRequest,
  whole: readonly string[],
): Promise<Found> => foundOf(services, session.company, soughtOf(request), new Set(whole));
