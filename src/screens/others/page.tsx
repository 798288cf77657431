import { learn } from "../parts/words/index.ts";
import { officeWords } from "../parts/words/office.ts";
import { Others } from "./index.tsx";

/** The page with its words. */
export function OthersPage({ token }: { readonly token: string }) {
  learn(officeWords);
  return <Others token={token} />;
}
