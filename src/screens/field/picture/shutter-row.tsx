import { useSpeaking } from "../../parts/speaking.ts";
import { Files } from "./files.tsx";

interface ShutterRowProps {
  /** What is in hand: no photo, one that can be read, or one that cannot. */
  readonly stands: "nothing" | "good" | "poor";
  /** Whether this item has a picture already. */
  readonly others: boolean;
  /** A photo is just coming in. */
  readonly waits: boolean;
  readonly onFiles: (files: readonly File[]) => Promise<void>;
  readonly onKeep: () => void;
}

/** What is pressed most, at the thumb: the shutter while nothing that can be read is in hand, else keeping it. */
export function ShutterRow({ stands, others, waits, onFiles, onKeep }: ShutterRowProps) {
  const { say } = useSpeaking();
  if (stands === "good")
    return (
      <div class="shutter-row">
        <button type="button" class="target main" disabled={waits} onClick={onKeep}>
          {say(others ? "picture-keep-beside" : "picture-keep")}
        </button>
        <Files from="camera" class="target" onFiles={onFiles}>
          {say("picture-again")}
        </Files>
      </div>
    );
  return (
    <div class="shutter-row">
      <Files from="camera" class="target main shutter" onFiles={onFiles}>
        {say(stands === "poor" ? "picture-again" : others ? "picture-one-more" : "picture-take")}
      </Files>
      {stands === "poor" ? (
        <button type="button" class="target" disabled={waits} onClick={onKeep}>
          {say("picture-all-the-same")}
        </button>
      ) : (
        <Files from="phone" class="target" onFiles={onFiles}>
          {say("picture-choose")}
        </Files>
      )}
    </div>
  );
}
