import type { numbersEn } from "./numbers-en.ts";

export const numbersEs: Readonly<Record<keyof typeof numbersEn, string>> = {};
