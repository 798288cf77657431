import { Frame } from "./frame.tsx";
import { useSpeaking } from "./speaking.ts";

/** A place of the app that there is not. */
export function NoSuchPage() {
  const { say } = useSpeaking();
  return <Frame title={say("no-such-page")} news={{ readAt: Date.now() }} inside={true} />;
}
