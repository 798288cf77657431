import { useState } from "preact/hooks";
import type { QuestionAnswer } from "../../wire/index.ts";
import { ask } from "../parts/edge.ts";
import { Frame } from "../parts/frame.tsx";
import { Link } from "../parts/link.tsx";
import { useNews } from "../parts/news.ts";
import { useSpeaking } from "../parts/speaking.ts";
import { counted } from "../parts/words/index.ts";
import { Answered } from "./answered.tsx";
import { AskedLimit } from "./asked-limit.tsx";
import { AskedWith } from "./asked-with.tsx";
import { Beside, goesByOwnFacts } from "./beside.tsx";

/** One question of the company owner's with its answer. */
export function QuestionPage({ question }: { readonly question: string }) {
  const { say } = useSpeaking();
  const [asked, setAsked] = useState("");
  const address = `/api/questions/${encodeURIComponent(question)}${asked === "" ? "" : `?${asked}`}`;
  // an answer that says the same is the same object, so that pictures are not drawn again every 15 s
  const news = useNews<QuestionAnswer>(address, async (before) => {
    const answer = await ask<QuestionAnswer>(address);
    const isSame = answer.is === "given" && before !== undefined && JSON.stringify(answer.value) === JSON.stringify(before);
    return isSame ? { is: "given", value: before } : answer;
  });
  const { value } = news;
  // the answer stands on top
  const askAgain = (query: string): void => {
    setAsked(query);
    scrollTo(0, 0);
  };
  return (
    <Frame title={value?.view.title ?? say("owner-questions")} news={news}>
      <p>
        <Link to="/">{say("owner-back")}</Link>
      </p>
      {value !== undefined && value.behind > 0 && <p class="stands-out">{counted(say, "owner-behind", value.behind)}</p>}
      {value !== undefined && <Answered view={value.view} asked={asked} />}
      {question === "changed-limit" && <AskedLimit onAsk={askAgain} />}
      {question !== "changed-limit" && question !== "tape-study" && <AskedWith question={question} onAsk={askAgain} />}
      {goesByOwnFacts(question) && <Beside question={question} changed={news.again} />}
    </Frame>
  );
}
