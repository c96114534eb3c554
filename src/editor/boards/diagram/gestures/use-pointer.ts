import { type RefObject, useEffect } from "react";
import { distance, type Point } from "../../../../base/index.ts";
import { addCorner, addModulePin, panBy, zoomAbout } from "../../../../session/index.ts";
import { keepClickFromOthers } from "../../stray-click.ts";
import type { Board } from "../board.ts";
import { operateGesture } from "../live/live-gesture.ts";
import { chosenBy, hitWhileOperating } from "../live/live-hit.ts";
import { followGesture, hoverNet } from "../scan/follow-gesture.ts";
import { scanTap } from "../scan/scan-layers.ts";
import { type Gesture, type Press, strayed } from "./gesture.ts";
import { panGesture, tapOrPan } from "./pan-gesture.ts";
import { placeGesture } from "./place-gesture.ts";
import { hitNow, selectGesture } from "./select-gesture.ts";
import { aimWire, wireGesture } from "./wire-gesture.ts";

const LONG_PRESS = 550;
const DOUBLE = 400;
const WHEEL_STEP = 0.0016;
/** A trackpad's pinch comes as small wheel steps with Ctrl. */
const PINCH_STEP = 0.012;

interface Held {
  readonly id: number;
  readonly down: Press;
  readonly gesture: Gesture;
  dragged: boolean;
}

function gestureFor(board: Board, down: Press, button: number): Gesture {
  const { tool } = board.session.get();
  if (button === 1 || board.get().spaceHeld || tool.name === "pan") return panGesture(board, down);
  // With a part or a wire in hand, a tap puts it there, whatever the scan desk shows.
  const isDrawing = tool.name === "place" || tool.name === "wire";
  const act = isOperated(board) || isDrawing ? null : scanTap(board, down);
  if (act) return tapOrPan(board, down, act);
  if (isOperated(board)) return operateGesture(board, down);
  if (tool.name === "wire") return wireGesture(board, down);
  if (tool.name === "follow") return followGesture(board, down);
  if (tool.name === "place") return placeGesture(board, tool.kind as never, down);
  return selectGesture(board, down);
}

/** A reading that asks where its lead goes comes before the machine: that tap works nothing. */
const isOperated = (board: Board): boolean => {
  const { operate, draft } = board.session.get();
  return operate.on && !draft;
};

/** A second tap on the same spot: edits words, adds a corner to a wire, or a pin to a module's edge. */
function doubleTap(board: Board, now: Press): void {
  const hit = hitNow(board, now);
  const { draft, tool, operate } = board.session.get();
  if (!hit || draft || operate.on || tool.name !== "select") return;
  if (hit.on === "wire") {
    board.commit(`Add a corner to ${hit.wire}`, (edited) =>
      addCorner(edited, hit.wire, hit.spot.at),
    );
    return;
  }
  const shape = board.scene()?.partById.get(hit.part);
  if (hit.on === "pin" && shape?.part.kind === "module") board.show({ editing: hit.ref });
  else if (shape?.part.kind === "module" && nearEdge(board, hit.part, now)) {
    board.commit(`Add a pin to ${hit.part}`, (edited) => {
      const pin = addModulePin(edited, hit.part, now.sheet);
      if (pin !== null) queueMicrotask(() => editPin(board, `${hit.part}:${pin}`));
    });
  } else board.show({ editing: hit.part });
}

function editPin(board: Board, ref: string) {
  board.session.show({ selection: [ref] });
  board.show({ editing: ref });
}

function nearEdge(board: Board, id: string, now: Press): boolean {
  const box = board.scene()?.partById.get(id)?.box;
  if (!box) return false;
  const [x, y] = now.sheet;
  const gaps = [x - box.left, box.right - x, y - box.top, box.bottom - y];
  return Math.min(...gaps.map(Math.abs)) <= board.reach(now.touch);
}

/** Pointers, wheel and long press on the board's canvas. */
export function usePointer(board: Board, target: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const element = target.current;
    if (!element) return;
    let held: Held | null = null;
    let timer = 0;
    let lastTap: { press: Press; time: number } | null = null;
    const fingers = new Map<number, Point>();

    const pressOf = (event: PointerEvent | MouseEvent): Press => {
      const box = element.getBoundingClientRect();
      const view: Point = [event.clientX - box.left, event.clientY - box.top];
      return {
        view,
        sheet: board.toSheet(view),
        touch: "pointerType" in event && event.pointerType === "touch",
        shift: event.shiftKey,
        clientX: event.clientX,
        clientY: event.clientY,
      };
    };
    const drop = () => {
      clearTimeout(timer);
      held?.gesture.cancel?.();
      held = null;
    };
    const openMenu = (press: Press) => {
      if (board.session.get().operate.on) {
        const found = hitWhileOperating(board, press);
        if (found) board.session.show({ selection: [chosenBy(found)] });
        return;
      }
      const hit = hitNow(board, press);
      const { selection } = board.session.get();
      const ref = hit && (hit.on === "pin" ? hit.ref : hit.on === "part" ? hit.part : hit.wire);
      if (ref && !selection.includes(ref) && !(hit.on === "pin" && selection.includes(hit.part))) {
        const isModulePin =
          hit.on === "pin" && board.scene()?.partById.get(hit.part)?.part.kind === "module";
        board.session.show({ selection: [hit.on === "pin" && !isModulePin ? hit.part : ref] });
      }
      board.show({ menu: press.view, menuSheet: press.sheet });
    };

    const down = (event: PointerEvent) => {
      if (event.button === 2) return;
      element.focus({ preventScroll: true });
      const press = pressOf(event);
      if (event.pointerType === "touch") fingers.set(event.pointerId, press.view);
      if (fingers.size > 1) {
        drop();
        return;
      }
      if (held) return;
      // A pointer that has left already, or one made by a test, can't be held on to.
      if (event.isTrusted) element.setPointerCapture(event.pointerId);
      held = {
        id: event.pointerId,
        down: press,
        gesture: gestureFor(board, press, event.button),
        dragged: false,
      };
      if (event.button === 1) event.preventDefault();
      const { tool } = board.session.get();
      // A finger that stays on a switch holds it down.
      if (press.touch && tool.name === "select" && !isOperated(board)) {
        timer = window.setTimeout(() => {
          if (!held || held.dragged) return;
          drop();
          openMenu(press);
        }, LONG_PRESS);
      }
    };

    const pinch = (event: PointerEvent, now: Point) => {
      const before = fingers.get(event.pointerId);
      const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1];
      if (!before || !other) return;
      const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      const from = middle(before, other);
      const to = middle(now, other);
      const camera = panBy(board.camera(), [to[0] - from[0], to[1] - from[1]]);
      const factor = distance(now, other) / Math.max(1, distance(before, other));
      board.look(zoomAbout(camera, to, factor));
    };

    const move = (event: PointerEvent) => {
      const press = pressOf(event);
      if (fingers.size > 1) {
        pinch(event, press.view);
        fingers.set(event.pointerId, press.view);
        return;
      }
      if (fingers.has(event.pointerId)) fingers.set(event.pointerId, press.view);
      if (held?.id === event.pointerId) {
        if (strayed(held.down, press)) {
          held.dragged = true;
          clearTimeout(timer);
        }
        held.gesture.move?.(press);
        return;
      }
      hover(press);
    };
    const hover = (press: Press) => {
      const { tool } = board.session.get();
      const { ghost, hover: before } = board.get();
      board.pointer = press.sheet;
      if (tool.name === "place") {
        const turn = ghost?.turn ?? 0;
        board.show({ ghost: { kind: tool.kind as never, at: press.sheet, turn } });
        return;
      }
      if (tool.name === "wire" && board.get().wire) {
        aimWire(board, press);
        return;
      }
      if (tool.name === "follow") hoverNet(board, press);
      const hit = isOperated(board) ? hitWhileOperating(board, press) : hitNow(board, press);
      const same = hit?.on === before?.on && JSON.stringify(hit) === JSON.stringify(before);
      if (!same) board.show({ hover: hit });
      element.style.cursor = cursorFor(board, hit !== null);
    };

    const up = (event: PointerEvent) => {
      fingers.delete(event.pointerId);
      if (held?.id !== event.pointerId) return;
      clearTimeout(timer);
      const { gesture, dragged } = held;
      const press = pressOf(event);
      held = null;
      keepClickFromOthers(event);
      gesture.up?.(press, dragged);
      if (dragged) {
        lastTap = null;
        return;
      }
      const again =
        lastTap &&
        event.timeStamp - lastTap.time < DOUBLE &&
        distance(lastTap.press.view, press.view) < (press.touch ? 24 : 8);
      lastTap = again ? null : { press, time: event.timeStamp };
      if (again && event.button === 0) doubleTap(board, press);
    };
    const cancel = (event: PointerEvent) => {
      fingers.delete(event.pointerId);
      if (held?.id === event.pointerId) drop();
    };
    const leave = () => {
      const { hover: hit, ghost } = board.get();
      hoverNet(board, null);
      if (!held && (hit || ghost)) board.show({ hover: null, ghost: null });
    };
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      const { view } = pressOf(event);
      if (event.shiftKey) {
        board.look(panBy(board.camera(), [-(event.deltaX || event.deltaY), 0]));
        return;
      }
      const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 30 : 1;
      const step = event.ctrlKey && Math.abs(event.deltaY) < 50 ? PINCH_STEP : WHEEL_STEP;
      board.look(zoomAbout(board.camera(), view, Math.exp(-event.deltaY * lines * step)));
    };
    const context = (event: MouseEvent) => {
      event.preventDefault();
      if (!held) openMenu(pressOf(event));
    };
    /** Escape while a drag is under way. */
    const giveUp = () => {
      const was = held !== null && !held.gesture.handedOver?.();
      drop();
      return was;
    };
    board.giveUp = giveUp;

    element.addEventListener("pointerdown", down);
    element.addEventListener("pointermove", move);
    element.addEventListener("pointerup", up);
    element.addEventListener("pointercancel", cancel);
    element.addEventListener("pointerleave", leave);
    element.addEventListener("wheel", wheel, { passive: false });
    element.addEventListener("contextmenu", context);
    return () => {
      drop();
      element.removeEventListener("pointerdown", down);
      element.removeEventListener("pointermove", move);
      element.removeEventListener("pointerup", up);
      element.removeEventListener("pointercancel", cancel);
      element.removeEventListener("pointerleave", leave);
      element.removeEventListener("wheel", wheel);
      element.removeEventListener("contextmenu", context);
    };
  }, [board, target]);
}

function cursorFor(board: Board, onThing: boolean): string {
  const { tool } = board.session.get();
  if (tool.name === "pan" || board.get().spaceHeld) return "grab";
  if (tool.name === "wire" || tool.name === "place" || tool.name === "follow") return "crosshair";
  return onThing ? "pointer" : "default";
}
