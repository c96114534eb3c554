import type { PartOf } from "../../../../job/index.ts";
import {
  doStep,
  isSpring,
  otherPosition,
  placeLead,
  positionOf,
  type Session,
} from "../../../../session/index.ts";
import type { Board } from "../board.ts";
import { type Gesture, type Press, strayed } from "../gestures/gesture.ts";
import { panGesture } from "../gestures/pan-gesture.ts";
import { chosenBy, hitWhileOperating, probeUnder, switchAt } from "./live-hit.ts";

/** A hand on a switch: what happens when it presses, and when it lets go. */
export interface Touch {
  readonly down: () => void;
  readonly up: () => void;
  /** Slipped off, or the system took the finger away. */
  readonly slip: () => void;
}

const nothing = () => {};

/**
 * Touches a switch. One of two positions: over to the other one, and back again when it is let go
 * where a spring brings it back. With more positions it has to be said which: null.
 */
export function touchSwitch(session: Session, part: PartOf<"switch">): Touch | null {
  const { operate } = session.get();
  const to = otherPosition(part, operate);
  if (to === null) return null;
  const turn = () => doStep(session, { do: "turn", switch: part.id, position: to });
  const release = () => doStep(session, { do: "release", switch: part.id });
  if (isSpring(part, to)) return { down: turn, up: release, slip: release };
  // Held down from the panel: a touch lets it go.
  if (isSpring(part, positionOf(part, operate))) {
    return { down: nothing, up: release, slip: nothing };
  }
  return { down: nothing, up: turn, slip: nothing };
}

/** Operating: a touch works switches and chooses everything else, a drag moves the sheet. */
export function operateGesture(board: Board, down: Press): Gesture {
  const { session } = board;
  const { asks } = session.get().operate.leads;
  const found = asks ? null : switchAt(board, down);
  const touch = found && touchSwitch(session, found);
  let pan: Gesture | null = null;
  touch?.down();
  if (found) session.show({ selection: [found.id] });
  return {
    move: (now) => {
      if (!pan && strayed(down, now)) {
        pan = panGesture(board, down);
        touch?.slip();
      }
      pan?.move?.(now);
    },
    up: (now) => {
      if (pan) return;
      if (touch) touch.up();
      else if (asks) {
        const probe = probeUnder(board, now);
        if (probe) placeLead(session, asks, probe);
      } else if (!found) {
        const hit = hitWhileOperating(board, now);
        session.show({ selection: hit ? [chosenBy(hit)] : [] });
      }
    },
    cancel: () => {
      if (!pan) touch?.slip();
    },
  };
}
