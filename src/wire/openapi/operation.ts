import type * as z from "zod/mini";

export type Shape = z.core.$ZodType;
export type ShapeOutput<S extends Shape> = z.output<S>;

/** What an answer's body is where it is no JSON of a shape, by its media type. */
export const mediaTypes = {
  bytes: "application/octet-stream",
  pdf: "application/pdf",
  page: "text/html",
  csv: "text/csv",
  zip: "application/zip",
  calendar: "text/calendar",
  metrics: "application/openmetrics-text",
  jpeg: "image/jpeg",
  png: "image/png",
  picture: "image/*",
} as const;
export type Body = keyof typeof mediaTypes;

/** What a route says about itself; the router, the document and the test of doors are made from the same list. */
export interface Operation {
  readonly method: "GET" | "POST" | "PUT" | "DELETE";
  /** With `:name` for what varies. */
  readonly path: string;
  readonly says: string;
  readonly who: readonly string[];
  readonly takes?: Shape | "bytes";
  /** What may stand behind the address's question mark, each with what it means. */
  readonly asks?: Readonly<Record<string, string>>;
  /** Headers that may be sent along, each with what it means. */
  readonly heads?: Readonly<Record<string, string>>;
  readonly gives: Readonly<Record<number, Shape | Body | "nothing">>;
}
