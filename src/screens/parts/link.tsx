import type { ComponentChildren } from "preact";
import { useSpeaking } from "./speaking.ts";

/** A link to another place of the app; opened in a new window it works as any other. */
export function Link({
  to,
  class: look,
  children,
}: {
  readonly to: string;
  readonly class?: string;
  readonly children: ComponentChildren;
}) {
  const { go } = useSpeaking();
  const follow = (event: MouseEvent): void => {
    if (event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    go(to);
  };
  return (
    <a href={to} class={look ?? "target"} onClick={follow}>
      {children}
    </a>
  );
}
