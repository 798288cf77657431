import type { pictureEn } from "./picture-en.ts";

export const pictureEs: Readonly<Record<keyof typeof pictureEn, string>> = {};
