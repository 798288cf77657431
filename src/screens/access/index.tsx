import { accessEn } from "../parts/words/access-en.ts";
import { accessEs } from "../parts/words/access-es.ts";
import { learn } from "../parts/words/index.ts";
import { FirstPasskeyPage } from "./first.tsx";
import { AccessPage } from "./mine.tsx";
import { JoinPage, SignInPage } from "./sign-in.tsx";

/** The pages of getting in, with their words. */
export const accessPages = () => {
  learn({ en: accessEn, es: accessEs });
  return { AccessPage, FirstPasskeyPage, JoinPage, SignInPage };
};
