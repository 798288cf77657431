import { accessEn } from "./access-en.ts";
import { accessEs } from "./access-es.ts";
import { afterEn } from "./after-en.ts";
import { afterEs } from "./after-es.ts";
import { checkingEn } from "./checking-en.ts";
import { checkingEs } from "./checking-es.ts";
import { companyEn } from "./company-en.ts";
import { companyEs } from "./company-es.ts";
import { decidingEn } from "./deciding-en.ts";
import { decidingEs } from "./deciding-es.ts";
import { laidAsideEn } from "./laid-aside-en.ts";
import { laidAsideEs } from "./laid-aside-es.ts";
import { lookingEn } from "./looking-en.ts";
import { lookingEs } from "./looking-es.ts";
import { openingEn } from "./opening-en.ts";
import { openingEs } from "./opening-es.ts";
import { ownerEn } from "./owner-en.ts";
import { ownerEs } from "./owner-es.ts";
import { personsEn } from "./persons-en.ts";
import { personsEs } from "./persons-es.ts";
import { releasingEn } from "./releasing-en.ts";
import { releasingEs } from "./releasing-es.ts";
import { sheetsEn } from "./sheets-en.ts";
import { sheetsEs } from "./sheets-es.ts";

/** Words of pages that the crew's phone does not carry. */
export const officeWords = {
  en: {
    ...accessEn,
    ...afterEn,
    ...checkingEn,
    ...companyEn,
    ...decidingEn,
    ...laidAsideEn,
    ...lookingEn,
    ...openingEn,
    ...ownerEn,
    ...personsEn,
    ...releasingEn,
    ...sheetsEn,
  },
  es: {
    ...accessEs,
    ...afterEs,
    ...checkingEs,
    ...companyEs,
    ...decidingEs,
    ...laidAsideEs,
    ...lookingEs,
    ...openingEs,
    ...ownerEs,
    ...personsEs,
    ...releasingEs,
    ...sheetsEs,
  },
};
