import { useSpeaking } from "../../parts/speaking.ts";
import type { Which } from "./stage.tsx";
import { byKey, type Spot } from "./view.ts";

interface ControlsProps {
  readonly chosen: Which;
  readonly near: boolean;
  /** Which of the ends are set. */
  readonly set: readonly [boolean, boolean];
  readonly onWhole: () => void;
  readonly onNear: (which: Which) => void;
  readonly onMove: (by: Spot) => void;
  readonly onSnap: () => void;
}

const arrows = [
  ["measure-left", "ArrowLeft", "M15 5l-8 7 8 7z"],
  ["measure-up", "ArrowUp", "M5 15l7-8 7 8z"],
  ["measure-down", "ArrowDown", "M5 9l7 8 7-8z"],
  ["measure-right", "ArrowRight", "M9 5l8 7-8 7z"],
] as const;

/** Whole picture or one end of it, arrows that move that end by a pixel, and both ends to their edges. */
export function Controls({ chosen, near, set, onWhole, onNear, onMove, onSnap }: ControlsProps) {
  const { say } = useSpeaking();
  const number = chosen + 1;
  const keys = (event: KeyboardEvent): void => {
    const by = byKey(event.key, event.shiftKey);
    if (by === undefined) return;
    event.preventDefault();
    onMove(by);
  };
  return (
    <>
      <div class="measure-which">
        <button type="button" class="target" aria-pressed={!near} onClick={onWhole} onKeyDown={keys}>
          {say("measure-whole")}
        </button>
        {([0, 1] as const).map((which) => (
          <button
            key={which}
            type="button"
            class="target"
            aria-label={say("measure-end", { number: which + 1 })}
            aria-pressed={near && chosen === which}
            onClick={() => onNear(which)}
            onKeyDown={keys}
          >
            {which + 1}
          </button>
        ))}
      </div>
      {set[chosen] && (
        <div class="measure-arrows">
          {arrows.map(([word, key, path]) => (
            <button
              key={key}
              type="button"
              class="target"
              aria-label={say(word, { number })}
              onClick={(event) => {
                const by = byKey(key, event.shiftKey);
                if (by !== undefined) onMove(by);
              }}
              onKeyDown={keys}
            >
              <svg viewBox="0 0 24 24" aria-hidden="true">
                <path d={path} />
              </svg>
            </button>
          ))}
        </div>
      )}
      {set[0] && set[1] && (
        <button type="button" class="target" onClick={onSnap}>
          {say("measure-snap")}
        </button>
      )}
    </>
  );
}
