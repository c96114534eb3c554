import { type PointerEvent, useEffect, useRef } from "react";
import type { Point } from "../../../base/index.ts";

/** Pixels that a pointer may wander and still be a tap. */
const SLOP = 6;

/** What the photo makes of the pointer; places are pixels from the top left of its frame. */
export interface PhotoGestures {
  readonly tap: (at: Point) => void;
  /** A drag leaves the place where it was pressed. */
  readonly begin: (from: Point, to: Point) => void;
  readonly drag: (to: Point) => void;
  readonly drop: (to: Point) => void;
  /** A second finger, or the system, broke the drag off. */
  readonly broken: () => void;
  readonly pan: (by: Point) => void;
  readonly zoom: (factor: number, at: Point) => void;
  /** The wheel while something is dragged: up or down by one. */
  readonly count: (by: 1 | -1) => void;
}

type Phase =
  | { readonly name: "idle" }
  | { readonly name: "pressed" | "dragging"; readonly start: Point }
  | { readonly name: "panning"; readonly last: Point }
  | { readonly name: "pinching"; readonly apart: number; readonly middle: Point };

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];

/**
 * Tap and drag with one finger or the mouse, pan and zoom with two fingers, the middle button or
 * the wheel. Returns the handlers to spread over the frame and the ref to hang on it.
 */
export function usePhotoGestures(gestures: PhotoGestures) {
  const element = useRef<HTMLDivElement>(null);
  const phase = useRef<Phase>({ name: "idle" });
  const pointers = useRef(new Map<number, Point>());
  const latest = useRef(gestures);
  latest.current = gestures;

  const placeOf = (event: { clientX: number; clientY: number }): Point => {
    const box = element.current?.getBoundingClientRect();
    return [event.clientX - (box?.left ?? 0), event.clientY - (box?.top ?? 0)];
  };

  useEffect(() => {
    const target = element.current;
    if (!target) return;
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      const box = target.getBoundingClientRect();
      const at: Point = [event.clientX - box.left, event.clientY - box.top];
      const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
      if (phase.current.name === "dragging") latest.current.count(event.deltaY < 0 ? 1 : -1);
      else latest.current.zoom(Math.exp(-event.deltaY * lines * 0.0015), at);
    };
    target.addEventListener("wheel", wheel, { passive: false });
    return () => target.removeEventListener("wheel", wheel);
  }, []);

  const pinch = (): Phase => {
    const [a, b] = [...pointers.current.values()];
    if (!a || !b) return { name: "idle" };
    return {
      name: "pinching",
      apart: Math.hypot(...minus(a, b)),
      middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
    };
  };

  const onPointerDown = (event: PointerEvent) => {
    if (event.button === 2) return;
    const at = placeOf(event);
    pointers.current.set(event.pointerId, at);
    element.current?.setPointerCapture(event.pointerId);
    if (pointers.current.size > 1) {
      if (phase.current.name === "dragging") latest.current.broken();
      phase.current = pinch();
    } else if (event.button === 1) {
      event.preventDefault();
      phase.current = { name: "panning", last: at };
    } else {
      phase.current = { name: "pressed", start: at };
    }
  };

  const onPointerMove = (event: PointerEvent) => {
    if (!pointers.current.has(event.pointerId)) return;
    const at = placeOf(event);
    pointers.current.set(event.pointerId, at);
    const now = phase.current;
    if (now.name === "pinching") {
      const next = pinch();
      if (next.name !== "pinching") return;
      latest.current.pan(minus(next.middle, now.middle));
      if (now.apart > 0 && next.apart > 0) latest.current.zoom(next.apart / now.apart, next.middle);
      phase.current = next;
    } else if (now.name === "panning") {
      latest.current.pan(minus(at, now.last));
      phase.current = { name: "panning", last: at };
    } else if (now.name === "dragging") {
      latest.current.drag(at);
    } else if (now.name === "pressed" && Math.hypot(...minus(at, now.start)) > SLOP) {
      phase.current = { name: "dragging", start: now.start };
      latest.current.begin(now.start, at);
    }
  };

  const onPointerUp = (event: PointerEvent) => {
    if (!pointers.current.delete(event.pointerId)) return;
    const now = phase.current;
    const at = placeOf(event);
    if (now.name === "pressed") latest.current.tap(at);
    if (now.name === "dragging") latest.current.drop(at);
    // One finger that stays after a pinch goes on panning instead of filling.
    const [left] = pointers.current.values();
    phase.current = left ? { name: "panning", last: left } : { name: "idle" };
  };

  const onPointerCancel = (event: PointerEvent) => {
    if (!pointers.current.delete(event.pointerId)) return;
    if (phase.current.name === "dragging") latest.current.broken();
    phase.current = { name: "idle" };
  };

  return {
    ref: element,
    handlers: { onPointerDown, onPointerMove, onPointerUp, onPointerCancel },
  };
}
