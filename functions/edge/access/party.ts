import type { Environment } from "../environment.ts";

/** Where passkeys belong to; from the configuration alone, whatever a request says of its host. */
export interface Party {
  /** As a browser says it: scheme, host and port. */
  readonly origin: string;
  /** The host: what a passkey is made for. */
  readonly id: string;
}

export function partyOf({ ORIGIN }: Environment): Party | undefined {
  if (ORIGIN === undefined || !URL.canParse(ORIGIN)) return undefined;
  const { origin, hostname } = new URL(ORIGIN);
  return { origin, id: hostname };
}
