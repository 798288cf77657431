import { createContext } from "preact";
import { useContext, useEffect, useState } from "preact/hooks";
import type { Book } from "./book.ts";
import type { Keep } from "./keep.ts";
import type { KeepState } from "./state.ts";

export const KeepContext = createContext<Keep | undefined>(undefined);

/** The phone's store and what it holds now; draws again with every change. */
export function useKeep(): { readonly keep: Keep; readonly state: KeepState } {
  const keep = useContext(KeepContext);
  if (keep === undefined) throw new Error("no store stands around this page");
  const [state, setState] = useState(keep.state);
  useEffect(() => {
    setState(keep.state);
    return keep.subscribe(() => setState(keep.state));
  }, [keep]);
  return { keep, state };
}

/** The book of one job, while this phone holds it. */
export function useBook(job: string): Book | undefined {
  const { state } = useKeep();
  return state.books.find(({ kept }) => kept.job === job);
}
