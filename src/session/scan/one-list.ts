/** A list of proposals that takes some of the picture's room. */
export interface OpenList {
  subscribe(tell: () => void): () => void;
  isOpen(): boolean;
  /** Closing it would break off work that it waits for. */
  isBusy(): boolean;
  close(): void;
}

/**
 * Of these lists only the one opened last stays open: the picture, by which all of them are judged, keeps its
 * room. Work under way is not broken off: its list goes when that is done. Returns how to stop it.
 */
export function keepOneOpen(lists: readonly OpenList[]): () => void {
  let open = lists.filter((list) => list.isOpen());
  /** A list that is being closed may tell of something else first: it is not asked to close again. */
  let isClosing = false;
  const heed = () => {
    if (isClosing) return;
    const now = lists.filter((list) => list.isOpen());
    const opened = now.filter((list) => !open.includes(list));
    // In the order in which they were opened.
    open = [...open.filter((list) => now.includes(list)), ...opened];
    isClosing = true;
    for (const list of open.slice(0, -1)) if (!list.isBusy()) list.close();
    isClosing = false;
    open = open.filter((list) => list.isOpen());
  };
  const stops = lists.map((list) => list.subscribe(heed));
  return () => {
    for (const stop of stops) stop();
  };
}
