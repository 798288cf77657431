import type { Figures } from "../../outcome/index.ts";
import { type Message, message } from "../finding.ts";

/** One fact about a picture: what it speaks for or against is the picture's being what it was entered as. */
export interface PictureLine {
  readonly speaks: "for" | "against" | "neither";
  readonly says: Message;
}

const speaking =
  (speaks: PictureLine["speaks"]) =>
  (key: string, figures: Figures = {}): PictureLine => ({ speaks, says: message(`photo.${key}`, figures) });

export const pro = speaking("for");
export const contra = speaking("against");
export const neither = speaking("neither");
