import { afterEn } from "./after-en.ts";
import { afterEs } from "./after-es.ts";
import { checkingEn } from "./checking-en.ts";
import { checkingEs } from "./checking-es.ts";
import { decidingEn } from "./deciding-en.ts";
import { decidingEs } from "./deciding-es.ts";
import { lookingEn } from "./looking-en.ts";
import { lookingEs } from "./looking-es.ts";
import { openingEn } from "./opening-en.ts";
import { openingEs } from "./opening-es.ts";
import { releasingEn } from "./releasing-en.ts";
import { releasingEs } from "./releasing-es.ts";

/** Words of pages that the crew's phone does not carry. */
export const officeWords = {
  en: { ...afterEn, ...checkingEn, ...decidingEn, ...lookingEn, ...openingEn, ...releasingEn },
  es: { ...afterEs, ...checkingEs, ...decidingEs, ...lookingEs, ...openingEs, ...releasingEs },
};
