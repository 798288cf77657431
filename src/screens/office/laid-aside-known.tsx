import type { LaidAsideList } from "../../wire/index.ts";
import { ask } from "../parts/edge.ts";
import { Link } from "../parts/link.tsx";
import { useNews } from "../parts/news.ts";
import { officePath } from "../parts/place.ts";
import { useSpeaking } from "../parts/speaking.ts";

/** Work of the company that did not go through, kept fresh. */
export const useLaidAside = () => useNews("laid aside", () => ask<LaidAsideList>("/api/laid-aside"));

/** Leads to it, with how much there is. */
export function LaidAsideLink() {
  const { say } = useSpeaking();
  const { value } = useLaidAside();
  const count = value === undefined ? 0 : value.work.length + value.more;
  return <Link to={officePath("laid-aside")}>{count === 0 ? say("laid-aside-open") : say("laid-aside-open-some", { count })}</Link>;
}
