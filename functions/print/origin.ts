/** The only place that a page of ours can load from. It exists nowhere: RFC 6761 keeps `.invalid` from ever resolving. */
export const ORIGIN = "https://record.invalid";
export const PAGE_ADDRESS = `${ORIGIN}/record`;
export const photoAddress = (sha256: string): string => `${ORIGIN}/photos/${sha256}.jpg`;
export const fontAddress = (file: string): string => `${ORIGIN}/fonts/${file}`;

export interface Served {
  readonly type: string;
  readonly bytes: Uint8Array;
  /** A picture that media or print made, byte for byte: it decodes. */
  readonly whole?: true;
}
