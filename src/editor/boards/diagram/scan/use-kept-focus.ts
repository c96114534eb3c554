import { type FocusEvent, type RefObject, useEffect, useRef } from "react";
import { focusDiagram, isFocusLost } from "../../../lost-focus.ts";

interface KeptFocus {
  onFocus: (event: FocusEvent) => void;
  onBlur: (event: FocusEvent) => void;
}

/**
 * Keeps the keys in a panel whose pressed button goes: they go on at what is next to do there, that is
 * the `data-next` that has come to the place of the one that had them; where none is left at
 * `data-rest`; and on the board when the panel goes.
 */
export function useKeptFocus(panel: RefObject<HTMLElement | null>): KeptFocus {
  const isHeld = useRef(false);
  /** Number of the last `data-next` at or before what had the keys. */
  const place = useRef(0);
  useEffect(() => {
    if (!isHeld.current || !isFocusLost()) return;
    const next = nextIn(panel.current);
    const on =
      next[Math.min(place.current, next.length - 1)] ??
      panel.current?.querySelector<HTMLElement>("[data-rest]");
    on?.focus({ preventScroll: true });
    // Of what is larger than the list its beginning.
    for (const one of [on, on?.firstElementChild])
      one?.scrollIntoView({ block: "nearest", inline: "nearest" });
  });
  useEffect(
    () => () => {
      if (isHeld.current && isFocusLost()) focusDiagram();
    },
    [],
  );
  return {
    onFocus: ({ target }) => {
      isHeld.current = true;
      const before = nextIn(panel.current).filter(
        (one) =>
          one === target || one.compareDocumentPosition(target) & Node.DOCUMENT_POSITION_FOLLOWING,
      );
      place.current = Math.max(0, before.length - 1);
    },
    onBlur: ({ target, relatedTarget }) => {
      // A button that is gone or greyed has lost the keys to nothing; they were not taken elsewhere.
      const isGone = !target.isConnected || target.matches(":disabled");
      if (relatedTarget !== null || !isGone) isHeld.current = false;
    },
  };
}

const nextIn = (panel: HTMLElement | null): readonly HTMLElement[] => [
  ...(panel?.querySelectorAll<HTMLElement>("[data-next]:not(:disabled)") ?? []),
];
