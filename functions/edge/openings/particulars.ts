import type { Json } from "#core/ledger/index.ts";
import type { Particulars } from "#core/wire/index.ts";
import type { Said } from "../jobs/say-in-job.ts";
import { partly, said } from "./facts.ts";

/** A change of particulars as the fact that says it: numbers and title in what, contacts and address in who. */
export function particularsSaid({ customer, onSite, receiver, address, ...what }: Particulars): Pick<Said, "kind" | "contents"> {
  const fields = (of: object) => said(of as { readonly [key: string]: Json | undefined });
  return { kind: "particulars-set", contents: { what: fields(what), ...partly("who", fields({ address, customer, onSite, receiver })) } };
}
