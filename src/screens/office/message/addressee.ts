import { type JobState, jobWho } from "../../../job/index.ts";

export interface Addressee {
  readonly name?: string;
  readonly address?: string;
}

const MAIL = /^[^\s@]+@[^\s@]+\.[^\s@]+$/;

/** Receiver of the record, else the customer, as the job's contacts have them; an address only where what stands there is one. */
export function receiverOf(state: JobState): Addressee {
  const who = jobWho(state) as Readonly<Record<string, { readonly name?: unknown; readonly contact?: unknown } | undefined>>;
  const given = who.receiver ?? who.customer;
  const name = typeof given?.name === "string" && given.name !== "" ? given.name : undefined;
  const address = typeof given?.contact === "string" && MAIL.test(given.contact.trim()) ? given.contact.trim() : undefined;
  return { ...(name !== undefined && { name }), ...(address !== undefined && { address }) };
}

/** Who is likely to sign: the receiver of the record, else the customer; which of the two stands beside the name. */
export function signerOf(state: JobState): { readonly name?: string; readonly of?: "receiver" | "customer" } {
  const who = jobWho(state) as Readonly<Record<string, { readonly name?: unknown } | undefined>>;
  const of = (["receiver", "customer"] as const).find((one) => typeof who[one]?.name === "string" && who[one]?.name !== "");
  return of === undefined ? {} : { name: String(who[of]?.name), of };
}

/** Hands a file to whoever sits here. */
export function saved(text: string, name: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: "message/rfc822" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // the browser reads it after the click
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
