import { useEffect, useRef, useState } from "preact/hooks";

/** Long enough that no elbow does it, short enough that nobody gives up. */
const HELD_MS = 1_200;
const KEYS: ReadonlySet<string> = new Set(["Enter", " "]);

/** A button that acts when it has been held: it fills meanwhile, and let go earlier it does nothing. The space bar holds it too. */
export function Hold({ title, onHeld }: { readonly title: string; readonly onHeld: () => void }) {
  const [held, setHeld] = useState(false);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const letGo = (): void => {
    clearTimeout(timer.current);
    timer.current = undefined;
    setHeld(false);
  };
  const press = (): void => {
    if (timer.current !== undefined) return;
    setHeld(true);
    timer.current = setTimeout(() => {
      letGo();
      navigator.vibrate?.(80);
      onHeld();
    }, HELD_MS);
  };
  useEffect(() => letGo, []);
  return (
    <button
      type="button"
      class={`target main hold ${held ? "held" : ""}`}
      onPointerDown={press}
      onPointerUp={letGo}
      onPointerLeave={letGo}
      onPointerCancel={letGo}
      onContextMenu={(event) => event.preventDefault()}
      onKeyDown={(event) => {
        if (!KEYS.has(event.key)) return;
        event.preventDefault();
        press();
      }}
      onKeyUp={letGo}
    >
      <span>{title}</span>
    </button>
  );
}
