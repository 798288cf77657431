import { Buffer } from "node:buffer";
import { sniff } from "#functions/shared/index.ts";
import { endOf } from "./whole.ts";

export type MarkType = "image/png" | "image/jpeg" | "image/svg+xml";

const textOf = (bytes: Uint8Array): string | undefined => {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
};

// declaration and comments may stand before the drawing
const DRAWING = /^\s*(?:<\?xml\s[^>]*\?>\s*)?(?:<!--(?:(?!-->)[\s\S])*-->\s*)*<svg[\s>]/;

/** What a company's mark was sent as, by its first bytes; undefined for anything that is not taken. */
export function markType(bytes: Uint8Array): MarkType | undefined {
  const type = sniff(bytes);
  if (type === "image/png" || type === "image/jpeg") return type;
  if (type !== undefined) return undefined;
  const text = textOf(bytes);
  return text !== undefined && DRAWING.test(text) ? "image/svg+xml" : undefined;
}

// what a drawing (SVG 2) can run, load or stand in for
const ACTIVE = [
  /<!(?:DOCTYPE|ENTITY)/i,
  /<\?xml-stylesheet/i,
  /<(?:[\w-]+:)?(?:script|foreignObject|iframe|object|embed|image|feImage|animate\w*|set|handler|listener)\b/i,
  /\son\w+\s*=/i,
  /href\s*=\s*(?:"(?!#)|'(?!#))/i,
  /url\(\s*["']?(?!#)/i,
  /@import/i,
  /javascript:/i,
];

/** Why a mark is not taken although it is of a known kind: something is in it besides one picture, or it is cut off. */
export function markFault(bytes: Uint8Array, type: MarkType): "mark-more-than-picture" | "mark-unreadable" | undefined {
  if (type === "image/svg+xml") {
    const text = textOf(bytes) ?? "";
    if (!/<\/svg>\s*$/.test(text)) return "mark-more-than-picture";
    return ACTIVE.some((one) => one.test(text)) ? "mark-more-than-picture" : undefined;
  }
  const end = endOf(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), type);
  if (end === undefined) return "mark-unreadable";
  return end < bytes.length ? "mark-more-than-picture" : undefined;
}
