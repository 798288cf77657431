import { lookingEn } from "./looking-en.ts";
import { lookingEs } from "./looking-es.ts";

/** Words of pages that the crew's phone does not carry. */
export const officeWords = { en: lookingEn, es: lookingEs };
