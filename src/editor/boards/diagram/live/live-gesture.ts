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
import { type Gesture, type Press, strayedBy } from "../gestures/gesture.ts";
import { panGesture, tapOrPan } from "../gestures/pan-gesture.ts";
import { chosenBy, hitWhileOperating, probeUnder, switchAt } from "./live-hit.ts";

/** A hand on a switch: what happens when it presses, and when it lets go. */
export interface Touch {
  readonly down: () => void;
  readonly up: () => void;
  /** Whether it is down only as long as the hand is there. */
  readonly holds: boolean;
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
  if (isSpring(part, to)) return { down: turn, up: release, holds: true };
  // Held down from the panel: a touch lets it go.
  const held = isSpring(part, positionOf(part, operate));
  return { down: nothing, up: held ? release : turn, holds: false };
}

/** Operating: a touch works switches and chooses everything else, a drag moves the sheet. */
export function operateGesture(board: Board, down: Press): Gesture {
  const { session } = board;
  const { asks } = session.get().operate.leads;
  const found = asks ? null : switchAt(board, down);
  return found ? switchGesture(board, down, found) : chooseGesture(board, down);
}

/** A drag that sets out on a switch has shown itself as one by then, milliseconds. */
const HOLDS_AFTER = 200;
/** What a hand that means to press may slip, pixels of the view. */
const SLIP = { mouse: 8, touch: 14 };

/**
 * A press on a switch. A tap works it when it ends. What springs back is held down as soon as the
 * press can no longer be the beginning of a drag, and from then on until the hand lets go,
 * wherever it slips. A drag works nothing and moves the sheet.
 */
function switchGesture(board: Board, down: Press, part: PartOf<"switch">): Gesture {
  const { session } = board;
  const touch = touchSwitch(session, part);
  let pan: Gesture | null = null;
  let held = false;
  const choose = () => session.show({ selection: [part.id] });
  const hold = () => {
    held = true;
    choose();
    touch?.down();
  };
  const timer = touch?.holds ? setTimeout(hold, HOLDS_AFTER) : undefined;
  const letGo = () => {
    clearTimeout(timer);
    if (held) touch?.up();
    held = false;
  };
  return {
    move: (now) => {
      if (held) return;
      if (!pan && strayedBy(SLIP, down, now)) {
        clearTimeout(timer);
        pan = panGesture(board, down);
      }
      pan?.move?.(now);
    },
    up: () => {
      if (pan) return;
      if (held) {
        letGo();
        return;
      }
      clearTimeout(timer);
      choose();
      touch?.down();
      touch?.up();
    },
    cancel: letGo,
  };
}

/** A press anywhere else: places the lead that is asked for, or chooses what is there. */
function chooseGesture(board: Board, down: Press): Gesture {
  const { session } = board;
  const { asks } = session.get().operate.leads;
  return tapOrPan(board, down, (now) => {
    if (asks) {
      const probe = probeUnder(board, now);
      if (probe) placeLead(session, asks, probe);
    } else {
      const hit = hitWhileOperating(board, now);
      session.show({ selection: hit ? [chosenBy(hit)] : [] });
    }
  });
}
