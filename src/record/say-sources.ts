import type { Finding } from "../job/index.ts";
import { makeDesignSayer } from "./say-design.ts";
import { fill, type Speaking, sentences } from "./speaking.ts";

/** Where most of a finding's doubt comes from, largest first, as one sentence; empty where it has none. */
export function makeSources({ language, units }: Pick<Speaking, "language" | "units">) {
  const texts: Readonly<Record<string, string>> = sentences[language];
  const { source } = makeDesignSayer({ language, units });
  const name = (of: string): string => texts[`source.${of}`] ?? source(of);
  return ({ contributors = [] }: Finding): string => {
    const named = contributors.filter(({ u }) => u > 0).map((one) => name(one.name));
    return named.length === 0 ? "" : fill(sentences[language]["tried.most"], { sources: named.join("; ") });
  };
}
