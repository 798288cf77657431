import type { Message } from "../../job/index.ts";
import type { Label } from "../question.ts";

/** What an answer is put into words with. */
export interface QualitySpeaking {
  readonly language: "en" | "es";
  readonly units: "inch" | "metric";
  /** The name that somebody reads for what a row or a point is about. */
  readonly name: (label: Label) => string;
  readonly say: (message: Message) => string;
  /** A key of the dictionary without figures. */
  readonly word: (key: string) => string;
}
