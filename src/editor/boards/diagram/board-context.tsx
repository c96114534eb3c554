import { createContext, useContext, useSyncExternalStore } from "react";
import type { Board, BoardState } from "./board.ts";

const BoardContext = createContext<Board | null>(null);

export const BoardProvider = BoardContext.Provider;

export function useBoard(): Board {
  const board = useContext(BoardContext);
  if (!board) throw new Error("useBoard outside BoardProvider");
  return board;
}

/** A slice of the board's own state; `select` must return a stored object or a primitive. */
export function useBoardState<T>(select: (state: BoardState) => T): T {
  const board = useBoard();
  return useSyncExternalStore(board.subscribe, () => select(board.get()));
}
