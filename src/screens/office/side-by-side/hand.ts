import type { RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { moved, type Near, nearer } from "./near.ts";

type Spot = { readonly x: number; readonly y: number };

const spotIn = (frame: Element, { clientX, clientY }: { readonly clientX: number; readonly clientY: number }): Spot => {
  const { left, top, width, height } = frame.getBoundingClientRect();
  return { x: (clientX - left) / width, y: (clientY - top) / height };
};
const apart = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Wheel, drag and two fingers on a frame; what they do is told, and every frame that listens follows. */
export function useHand(frame: RefObject<HTMLElement | null>, change: (how: (near: Near) => Near) => void): void {
  const told = useRef(change);
  told.current = change;
  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const down = new Map<number, Spot>();
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      const spot = spotIn(element, event);
      told.current((near) => nearer(near, 2 ** (-event.deltaY / 300), spot));
    };
    const pressed = (event: PointerEvent): void => {
      down.set(event.pointerId, spotIn(element, event));
      element.setPointerCapture(event.pointerId);
    };
    const went = (event: PointerEvent): void => {
      const before = down.get(event.pointerId);
      if (before === undefined) return;
      const now = spotIn(element, event);
      const [other] = [...down].filter(([id]) => id !== event.pointerId).map(([, spot]) => spot);
      down.set(event.pointerId, now);
      if (other === undefined) told.current((near) => moved(near, now.x - before.x, now.y - before.y));
      else if (apart(before, other) > 0) {
        const middle = { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 };
        told.current((near) => nearer(near, apart(now, other) / apart(before, other), middle));
      }
    };
    const up = (event: PointerEvent): void => void down.delete(event.pointerId);
    // a page that only listens could not keep the wheel from scrolling it
    element.addEventListener("wheel", wheel, { passive: false });
    element.addEventListener("pointerdown", pressed);
    element.addEventListener("pointermove", went);
    element.addEventListener("pointerup", up);
    element.addEventListener("pointercancel", up);
    return () => {
      element.removeEventListener("wheel", wheel);
      element.removeEventListener("pointerdown", pressed);
      element.removeEventListener("pointermove", went);
      element.removeEventListener("pointerup", up);
      element.removeEventListener("pointercancel", up);
    };
  }, [frame]);
}
