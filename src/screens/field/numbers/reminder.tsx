import { leavingTonight } from "../../../job/index.ts";
import { Link } from "../../parts/link.tsx";
import { useSpeaking } from "../../parts/speaking.ts";
import { type Book, useKeep } from "../keep/index.ts";
import { useMinute } from "../minute.ts";
import { tonightPath } from "../paths.ts";
import { toSettle } from "./evening.ts";

function unsettledIn({ state, findings }: Book, at: number): number {
  const zone = state.opened?.zone ?? "UTC";
  return toSettle(leavingTonight(state, at, findings), at, zone);
}

/** From three in the afternoon of the site on: every job that leaves something open and has not said how. Nothing before, nothing once it is entered. */
export function TonightReminder() {
  const { say } = useSpeaking();
  const { state } = useKeep();
  const at = useMinute();
  const open = state.books.map((book) => ({ book, count: unsettledIn(book, at) })).filter(({ count }) => count > 0);
  if (open.length === 0) return null;
  return (
    <ul class="choices tonight-reminder">
      {open.map(({ book: { kept }, count }) => (
        <li key={kept.job}>
          <Link to={tonightPath(kept.job)}>
            <span>
              <b>{say("numbers-tonight")}</b> {say("night-reminder", { title: kept.title, count })}
            </span>
          </Link>
        </li>
      ))}
    </ul>
  );
}
