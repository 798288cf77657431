import type { readingEn } from "./reading-en.ts";

export const readingEs: Readonly<Record<keyof typeof readingEn, string>> = {};
