import type { ComponentChildren } from "preact";
import { useSpeaking } from "./speaking.ts";
import type { ScreenWord } from "./words/index.ts";

/** A headed part of a page. */
export function Section({
  title,
  look = "",
  children,
}: {
  readonly title: ScreenWord;
  readonly look?: string;
  readonly children: ComponentChildren;
}) {
  const { say } = useSpeaking();
  return (
    <section class={look}>
      <h2>{say(title)}</h2>
      {children}
    </section>
  );
}

/** Said wherever a clearance is shown. */
export function NotJudged() {
  const { say } = useSpeaking();
  return <p class="not-judged">{say("not-judged")}</p>;
}
