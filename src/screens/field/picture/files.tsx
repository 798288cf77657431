import type { ComponentChildren } from "preact";
import { useKeep } from "../keep/index.ts";
import { cameraClosed, cameraOpens } from "./camera.ts";

interface FilesProps {
  /** The camera itself, or pictures that lie on the phone already. */
  readonly from: "camera" | "phone";
  readonly several?: boolean;
  readonly onFiles: (files: readonly File[]) => Promise<void>;
  readonly class: string;
  readonly children: ComponentChildren;
}

/** A target that opens the camera or the phone's pictures; where it was opened is kept first, since the phone may close the app meanwhile. */
export function Files({ from, several, onFiles, class: look, children }: FilesProps) {
  const { keep } = useKeep();
  return (
    <label class={`files ${look}`}>
      {children}
      <input
        type="file"
        accept="image/*"
        multiple={several === true}
        {...(from === "camera" ? { capture: "environment" as const } : {})}
        onClick={() => void cameraOpens(keep)}
        onCancel={() => void cameraClosed(keep)}
        onChange={(event) => {
          const input = event.currentTarget;
          const files = [...(input.files ?? [])];
          // the same picture may be chosen once more
          input.value = "";
          void onFiles(files).finally(() => cameraClosed(keep));
        }}
      />
    </label>
  );
}
