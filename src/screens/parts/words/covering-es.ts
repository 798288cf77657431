import type { coveringEn } from "./covering-en.ts";

export const coveringEs: Readonly<Record<keyof typeof coveringEn, string>> = {};
