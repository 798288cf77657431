import { makeSayer } from "#core/record/index.ts";
import type { Say } from "#functions/shared/index.ts";

/** The maker of a refusal's sentence in a language and a company's units. Refusals name no instant, so the zone is moot. */
export function sayIn(language: string, units: string): Say {
  const sayer = makeSayer({ language: language === "es" ? "es" : "en", units: units === "metric" ? "metric" : "inch", zone: "UTC" });
  return (refusal) => sayer.refusal(refusal);
}
