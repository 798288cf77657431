import type { Refusal } from "#core/outcome/index.ts";
import type { Say } from "#functions/shared/index.ts";

// Stand-in until src/record has the dictionary: this is the only place that makes a refusal's sentence.
/** The maker of a refusal's sentence in a language. */
export const sayIn =
  (_language: string, _units: string): Say =>
  ({ code, place, figures }: Refusal) =>
    `${code.replaceAll("-", " ")}${place === "" ? "" : ` (${place})`}${typeof figures.why === "string" ? `: ${figures.why}` : ""}`;
