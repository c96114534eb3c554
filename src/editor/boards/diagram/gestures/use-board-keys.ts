import { type RefObject, useEffect } from "react";
import type { Board } from "../board.ts";
import { backOutOfScan } from "../scan/back-out.ts";
import { makeWires } from "../scan/make-wires.ts";
import { backOutOfWire, endWireHere } from "./wire-gesture.ts";

const isTyping = (target: EventTarget | null) =>
  target instanceof HTMLElement &&
  (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName));

/** True when the board took the key: what is under way on it comes before any command. */
function take(board: Board, event: KeyboardEvent, onBoard: boolean): boolean {
  const { wire, ghost } = board.get();
  const { tool } = board.session.get();
  switch (event.key) {
    case "Escape":
      return board.giveUp() || backOutOfWire(board) || backOutOfScan(board.session);
    case "Enter":
      if (tool.name === "follow" && onBoard) return makeWires(board.session);
      if (!wire) return false;
      endWireHere(board);
      return true;
    case "Backspace":
      return backOutOfWire(board);
    case "r":
    case "R":
      if (tool.name !== "place" || !ghost) return false;
      board.show({ ghost: { ...ghost, turn: (ghost.turn + (event.shiftKey ? 270 : 90)) % 360 } });
      return true;
    case " ":
      if (!onBoard) return false;
      if (!board.get().spaceHeld) board.show({ spaceHeld: true });
      return true;
    case "ContextMenu":
    case "F10": {
      if (!onBoard || (event.key === "F10" && !event.shiftKey)) return false;
      if (board.session.get().operate.on) return true;
      const { width, height } = board.get().size;
      board.show({ menu: [width / 2, height / 3], menuSheet: null });
      return true;
    }
    default:
      return false;
  }
}

/**
 * Keys that belong to what is under way on the board: they are taken before the list of commands
 * sees them. Ctrl and Command chords never are.
 */
export function useBoardKeys(board: Board, target: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      const inside =
        event.target instanceof Node && target.current?.contains(event.target) === true;
      const onBoard = inside || event.target === document.body;
      if (
        event.target instanceof Element &&
        event.target.closest('[role="menu"],[role="dialog"]')
      ) {
        return;
      }
      if (!take(board, event, onBoard)) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    };
    const release = (event: KeyboardEvent) => {
      if (event.key === " " && board.get().spaceHeld) board.show({ spaceHeld: false });
    };
    const lose = () => board.show({ spaceHeld: false });
    addEventListener("keydown", press, true);
    addEventListener("keyup", release, true);
    addEventListener("blur", lose);
    return () => {
      removeEventListener("keydown", press, true);
      removeEventListener("keyup", release, true);
      removeEventListener("blur", lose);
    };
  }, [board, target]);
}
