import { type MouseEvent, type PointerEvent as ReactPointerEvent, useEffect, useRef } from "react";
import type { Point } from "../../../base/index.ts";
import { keepClickFromOthers } from "../stray-click.ts";

/** Pixels that a pointer may wander and still be a tap. */
const SLOP = 7;
const LONG_PRESS_MS = 500;

export interface BoardPointer {
  readonly clientX: number;
  readonly clientY: number;
}

/** What the board makes of the pointer; cavities by their place in the plug's list. */
export interface FaceGestures {
  readonly cavityUnder: (at: BoardPointer) => number | null;
  readonly tap: (cavity: number | null, at: BoardPointer) => void;
  readonly menu: (cavity: number | null, at: BoardPointer) => void;
  /** A cavity is being dragged away from where it was touched. True when the drag is followed here. */
  readonly dragFrom: (cavity: number, at: BoardPointer) => boolean;
  readonly drag: (cavity: number, by: Point) => void;
  /** `by` is null when the drag was broken off. */
  readonly drop: (cavity: number, by: Point | null) => void;
  readonly pan: (by: Point) => void;
  readonly zoom: (factor: number, at: BoardPointer) => void;
}

type Phase =
  | { readonly name: "idle" }
  | { readonly name: "pressed"; readonly cavity: number | null; readonly start: BoardPointer }
  | { readonly name: "panning"; readonly last: BoardPointer }
  | { readonly name: "dragging"; readonly cavity: number; readonly start: BoardPointer }
  | { readonly name: "pinching"; readonly apart: number; readonly middle: BoardPointer };

const between = (from: BoardPointer, to: BoardPointer): Point => [
  to.clientX - from.clientX,
  to.clientY - from.clientY,
];

const placeOf = ({ clientX, clientY }: BoardPointer): BoardPointer => ({ clientX, clientY });

/**
 * Tap, drag, long press, pinch and wheel on the face. Returns the handlers to spread over the
 * element and the ref to hang on it: the wheel needs a listener that may stop the page's own zoom.
 */
export function useFaceGestures(gestures: FaceGestures) {
  const element = useRef<HTMLElement>(null);
  const phase = useRef<Phase>({ name: "idle" });
  const pointers = useRef(new Map<number, BoardPointer>());
  const timer = useRef(0);
  const hasOpenedMenu = useRef(false);
  const latest = useRef(gestures);
  latest.current = gestures;

  const settle = (next: Phase) => {
    clearTimeout(timer.current);
    const now = phase.current;
    if (now.name === "dragging" && next.name !== "dragging") latest.current.drop(now.cavity, null);
    phase.current = next;
  };

  useEffect(() => {
    const target = element.current;
    if (!target) return;
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
      latest.current.zoom(Math.exp(-event.deltaY * lines * 0.0015), event);
    };
    // The click made up after a long press would take the focus from the menu, and close it.
    const lift = (event: TouchEvent) => {
      if (hasOpenedMenu.current) event.preventDefault();
      hasOpenedMenu.current = false;
    };
    target.addEventListener("wheel", wheel, { passive: false });
    target.addEventListener("touchend", lift, { passive: false });
    return () => {
      clearTimeout(timer.current);
      target.removeEventListener("touchend", lift);
      target.removeEventListener("wheel", wheel);
    };
  }, []);

  const startPinch = () => {
    const [a, b] = [...pointers.current.values()];
    if (!a || !b) return;
    settle({ name: "pinching", apart: Math.hypot(...between(a, b)), middle: middleOf(a, b) });
  };

  const onPointerDown = (event: ReactPointerEvent) => {
    if (event.button === 2) return;
    pointers.current.set(event.pointerId, placeOf(event));
    if (pointers.current.size > 1) {
      startPinch();
      return;
    }
    if (event.button === 1) {
      event.preventDefault();
      settle({ name: "panning", last: placeOf(event) });
      return;
    }
    hasOpenedMenu.current = false;
    const start = placeOf(event);
    const cavity = latest.current.cavityUnder(start);
    settle({ name: "pressed", cavity, start });
    if (event.pointerType === "mouse") return;
    timer.current = window.setTimeout(() => {
      settle({ name: "idle" });
      hasOpenedMenu.current = true;
      latest.current.menu(cavity, start);
    }, LONG_PRESS_MS);
  };

  const onPointerMove = (event: ReactPointerEvent) => {
    if (!pointers.current.has(event.pointerId)) return;
    pointers.current.set(event.pointerId, placeOf(event));
    const now = phase.current;
    if (now.name === "pinching") {
      const [a, b] = [...pointers.current.values()];
      if (!a || !b) return;
      const apart = Math.hypot(...between(a, b));
      const middle = middleOf(a, b);
      latest.current.pan(between(now.middle, middle));
      if (now.apart > 0 && apart > 0) latest.current.zoom(apart / now.apart, middle);
      phase.current = { name: "pinching", apart, middle };
    } else if (now.name === "panning") {
      latest.current.pan(between(now.last, event));
      phase.current = { name: "panning", last: placeOf(event) };
    } else if (now.name === "dragging") {
      latest.current.drag(now.cavity, between(now.start, event));
    } else if (now.name === "pressed" && Math.hypot(...between(now.start, event)) > SLOP) {
      leavePress(now.cavity, now.start, event);
    }
  };

  const leavePress = (cavity: number | null, start: BoardPointer, event: ReactPointerEvent) => {
    if (cavity === null) {
      element.current?.setPointerCapture(event.pointerId);
      settle({ name: "panning", last: start });
    } else if (latest.current.dragFrom(cavity, event)) {
      element.current?.setPointerCapture(event.pointerId);
      settle({ name: "dragging", cavity, start });
    } else {
      settle({ name: "idle" });
    }
  };

  const onPointerUp = (event: ReactPointerEvent) => {
    if (!pointers.current.delete(event.pointerId)) return;
    const now = phase.current;
    keepClickFromOthers(event);
    if (now.name === "pressed") latest.current.tap(now.cavity, event);
    if (now.name === "dragging") {
      latest.current.drop(now.cavity, between(now.start, event));
      phase.current = { name: "idle" };
    }
    // One finger that stays after a pinch goes on panning instead of jumping.
    const [left] = pointers.current.values();
    settle(left ? { name: "panning", last: left } : { name: "idle" });
  };

  const onPointerCancel = (event: ReactPointerEvent) => {
    pointers.current.delete(event.pointerId);
    settle({ name: "idle" });
  };

  const onContextMenu = (event: MouseEvent) => {
    event.preventDefault();
    // A long press has opened the menu already; some browsers send this event after it as well.
    if (pointers.current.size > 0 && phase.current.name === "idle") return;
    pointers.current.clear();
    settle({ name: "idle" });
    latest.current.menu(latest.current.cavityUnder(event), placeOf(event));
  };

  return {
    ref: element,
    handlers: {
      onPointerDown,
      onPointerMove,
      onPointerUp,
      onPointerCancel,
      onContextMenu,
    },
  };
}

const middleOf = (a: BoardPointer, b: BoardPointer): BoardPointer => ({
  clientX: (a.clientX + b.clientX) / 2,
  clientY: (a.clientY + b.clientY) / 2,
});
