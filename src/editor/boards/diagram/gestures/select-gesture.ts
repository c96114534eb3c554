import type { Box, Point } from "../../../../base/index.ts";
import { ownerOf } from "../../../../job/index.ts";
import {
  type DiagramHit,
  handleAt,
  handlesOf,
  hitAt,
  idsInside,
  moveSegment,
  moveThings,
  pinAt,
  tidyCorners,
} from "../../../../session/index.ts";
import { beginLinkDrag } from "../../../link-drag.tsx";
import type { Board } from "../board.ts";
import { editGesture } from "./edit-gesture.ts";
import { type Gesture, type Press, strayed } from "./gesture.ts";
import { handleGesture } from "./handle-gesture.ts";
import { panGesture } from "./pan-gesture.ts";
import { tapProbe } from "./probe-tap.ts";

const refOf = (hit: DiagramHit): string =>
  hit.on === "pin" ? hit.ref : hit.on === "part" ? hit.part : hit.wire;

export function hitNow(board: Board, now: Press): DiagramHit | null {
  const scene = board.scene();
  return scene && hitAt(scene, now.sheet, board.reach(now.touch));
}

/** Whole pixels of the sheet: what is traced stays on round numbers. */
export const stepFrom = (down: Press, now: Press): Point => [
  Math.round(now.sheet[0] - down.sheet[0]),
  Math.round(now.sheet[1] - down.sheet[1]),
];

/** What a tap chooses: only modules' pins are things of their own, another pin means its part. */
function chosenBy(board: Board, hit: DiagramHit): string {
  if (hit.on !== "pin") return refOf(hit);
  const kind = board.scene()?.partById.get(hit.part)?.part.kind;
  return kind === "module" ? hit.ref : hit.part;
}

function tap(board: Board, now: Press): void {
  const hit = hitNow(board, now);
  const scene = board.scene();
  const { selection, draft } = board.session.get();
  if (draft?.asks && scene) {
    tapProbe(board.session, scene, hit, now.sheet);
    return;
  }
  if (!hit) {
    if (!now.shift) board.session.show({ selection: [] });
    return;
  }
  const ref = chosenBy(board, hit);
  const others = selection.filter((one) => one !== ref);
  const next = !now.shift ? [ref] : others.length < selection.length ? others : [...selection, ref];
  board.session.show({ selection: next });
}

function moveGesture(board: Board, down: Press, ids: readonly string[]): Gesture {
  const label = ids.length === 1 ? `Move ${ids[0]}` : `Move ${ids.length} things`;
  return editGesture(board, label, down, (draft, now) =>
    moveThings(draft, ids, stepFrom(down, now)),
  );
}

function bandGesture(board: Board, down: Press): Gesture {
  const before = board.session.get().selection;
  const boxTo = (now: Press): Box => ({
    left: Math.min(down.sheet[0], now.sheet[0]),
    top: Math.min(down.sheet[1], now.sheet[1]),
    right: Math.max(down.sheet[0], now.sheet[0]),
    bottom: Math.max(down.sheet[1], now.sheet[1]),
  });
  return {
    move: (now) => board.show({ band: boxTo(now) }),
    up: (now) => {
      const scene = board.scene();
      board.show({ band: null });
      if (!scene) return;
      const taken = idsInside(scene, boxTo(now));
      const kept = now.shift ? before : [];
      board.session.show({ selection: [...new Set([...kept, ...taken])] });
    },
    cancel: () => board.show({ band: null }),
  };
}

/** What a drag that starts on `hit` does. */
function dragFrom(board: Board, down: Press, hit: DiagramHit | null): Gesture {
  const { selection, draft } = board.session.get();
  // While probes are being picked nothing of the diagram may be moved by accident.
  if (draft) return panGesture(board, down);
  if (!hit) return bandGesture(board, down);
  const chosen = chosenBy(board, hit);
  if (hit.on === "pin" && chosen === hit.ref) {
    beginLinkDrag(hit.ref, down);
    return { handedOver: () => true };
  }
  const together = selection.filter((ref) => !ref.includes(":"));
  if (together.includes(chosen) && together.length > 1) return moveGesture(board, down, together);
  if (chosen !== selection[0]) board.session.show({ selection: [chosen] });
  if (hit.on === "wire") {
    const { wire, spot } = hit;
    return editGesture(
      board,
      `Bend ${wire}`,
      down,
      (edited, now) => moveSegment(edited, wire, spot.segment, down.sheet, roundPoint(now.sheet)),
      (edited) => tidyCorners(edited, wire),
    );
  }
  return moveGesture(board, down, [ownerOf(chosen)]);
}

const roundPoint = ([x, y]: Point): Point => [Math.round(x), Math.round(y)];

/** A tap chooses; a drag moves what it starts on, bends a wire, ties a module's pin, or draws a box. */
export function selectGesture(board: Board, down: Press): Gesture {
  const scene = board.scene();
  const { selection, draft } = board.session.get();
  if (scene && !draft) {
    const handles = handlesOf(scene, selection, 1 / board.camera().zoom);
    const handle = handleAt(handles, down.sheet, board.reach(down.touch) * 1.2);
    // A pin in the middle of a module's side lies under the handle there: the pin is the smaller.
    const onPin = handle?.grab === "size" && pinAt(scene, down.sheet, board.reach(down.touch));
    if (handle && !onPin) return handleGesture(board, down, handle);
  }
  const hit = hitNow(board, down);
  let drag: Gesture | null = null;
  return {
    move: (now) => {
      if (!drag && strayed(down, now)) drag = dragFrom(board, down, hit);
      drag?.move?.(now);
    },
    up: (now, dragged) => {
      if (drag) drag.up?.(now, dragged);
      else tap(board, now);
    },
    cancel: () => drag?.cancel?.(),
    handedOver: () => drag?.handedOver?.() ?? false,
  };
}
