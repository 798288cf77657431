import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { FINEST, Glass } from "./glass.tsx";
import { Between, Mark } from "./marks.tsx";
import {
  type End,
  fitted,
  glassAt,
  inPicture,
  inside,
  nearView,
  onScreen,
  type Size,
  type Spot,
  setWithin,
  takenBy,
  type View,
  wholeView,
} from "./view.ts";

export type Ends = readonly [End | undefined, End | undefined];
export type Which = 0 | 1;

interface StageProps {
  readonly picture: ImageBitmap;
  readonly title: string;
  readonly ends: Ends;
  /** The end that is set now. */
  readonly chosen: Which;
  /** The picture about that end, instead of all of it. */
  readonly near: boolean;
  readonly onMove: (which: Which, end: End) => void;
  readonly onChoose: (which: Which) => void;
}

/** Share of the screen's height that the picture takes: what is pressed stays in sight. */
const TALLEST = 0.55;

/** Room for the picture: as wide as its column. */
function useRoom(): [(element: HTMLElement | null) => void, Size] {
  const [room, setRoom] = useState<Size>({ width: 340, height: 400 });
  const watch = useRef<ResizeObserver | undefined>(undefined);
  const [hold] = useState(() => (element: HTMLElement | null) => {
    watch.current?.disconnect();
    if (element === null) return;
    watch.current = new ResizeObserver(() =>
      setRoom({ width: Math.max(200, element.clientWidth), height: Math.max(200, TALLEST * innerHeight) }),
    );
    watch.current.observe(element);
  });
  return [hold, room];
}

function Drawn({ picture, stage, view, title }: { picture: ImageBitmap; stage: Size; view: View; title: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const fine = Math.min(FINEST, globalThis.devicePixelRatio || 1);
  const [width, height] = [Math.round(stage.width * fine), Math.round(stage.height * fine)];
  const { left, top, scale } = view;
  useLayoutEffect(() => {
    const context = canvas.current?.getContext("2d");
    if (!context) return;
    context.imageSmoothingQuality = "high";
    context.clearRect(0, 0, width, height);
    context.drawImage(picture, left, top, stage.width * scale, stage.height * scale, 0, 0, width, height);
  }, [picture, left, top, scale, width, height, stage.width, stage.height]);
  return <canvas ref={canvas} width={width} height={height} role="img" aria-label={title} />;
}

interface Held {
  readonly which: Which;
  /** Where finger and end were when it was taken, and the view in which they were. */
  readonly finger: Spot;
  readonly end: Spot;
  readonly view: View;
}

/** The picture with its two ends: tapped at first, then dragged, each under a round view of what lies about it. */
export function Stage({ picture, title, ends, chosen, near, onMove, onChoose }: StageProps) {
  const [hold, room] = useRoom();
  const held = useRef<Held | undefined>(undefined);
  const [finger, setFinger] = useState<Spot>();
  const stage = fitted(picture, room);
  const middle = ends[chosen];
  const view = held.current?.view ?? (near && middle !== undefined ? nearView(picture, stage, middle) : wholeView(picture, stage));
  const spots = ends.map((end) => end && onScreen(view, end));

  const fingerOf = (event: PointerEvent): Spot => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const take = (event: PointerEvent): void => {
    if (event.button !== 0 || !event.isPrimary) return;
    const at = fingerOf(event);
    const taken = near && middle !== undefined ? chosen : takenBy(at, spots);
    const unset = ends.indexOf(undefined);
    const which = taken ?? unset;
    if (which !== 0 && which !== 1) return;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    const before = taken === undefined ? undefined : ends[which];
    const end = before ?? inside(picture, inPicture(view, at));
    held.current = { which, finger: at, end, view };
    onChoose(which);
    if (before === undefined) onMove(which, { ...end, u: setWithin(view) });
    setFinger(at);
  };
  const drag = (event: PointerEvent): void => {
    if (held.current === undefined || !event.isPrimary) return;
    const { which, finger: from, end, view: then } = held.current;
    const at = fingerOf(event);
    setFinger(at);
    if (at.x === from.x && at.y === from.y) return;
    const moved = inside(picture, { x: end.x + (at.x - from.x) * then.scale, y: end.y + (at.y - from.y) * then.scale });
    onMove(which, { ...moved, u: setWithin(then) });
  };
  const letGo = (): void => {
    held.current = undefined;
    setFinger(undefined);
  };

  const [from, to] = spots;
  const under = held.current && ends[held.current.which];
  return (
    <div class="measure-room" ref={hold}>
      <div class="measure-stage" style={{ width: `${stage.width}px`, height: `${stage.height}px` }}>
        <Drawn picture={picture} stage={stage} view={view} title={title} />
        <svg aria-hidden="true" onPointerDown={take} onPointerMove={drag} onPointerUp={letGo} onPointerCancel={letGo}>
          {from && to && <Between from={from} to={to} />}
          {spots.map(
            (spot, which) => spot && <Mark key={which === 0 ? "first" : "second"} at={spot} which={which} chosen={which === chosen} />,
          )}
        </svg>
        {finger && under && <Glass picture={picture} spot={under} scale={view.scale} at={glassAt(finger, stage)} />}
      </div>
    </div>
  );
}
