import type { Access } from "../../wire/index.ts";
import { ask } from "../parts/edge.ts";
import { Frame } from "../parts/frame.tsx";
import { useNews } from "../parts/news.ts";
import { useSpeaking } from "../parts/speaking.ts";
import { MakePasskey } from "./make.tsx";
import { WaysIn } from "./ways-in.tsx";

/** One's own passkeys and devices. */
export function AccessPage() {
  const { say, session } = useSpeaking();
  const news = useNews("access", () => ask<Access>("/api/access"));
  return (
    <Frame title={say("access-title")} news={news} inside={true}>
      <section class="access-part">
        {news.value !== undefined && <WaysIn access={news.value} heading="h2" again={news.again} />}
        {session.role !== "crew" && <MakePasskey made={news.again} />}
      </section>
    </Frame>
  );
}
