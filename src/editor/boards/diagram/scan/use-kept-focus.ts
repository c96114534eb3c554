import { type FocusEvent, type RefObject, useEffect, useRef } from "react";
import { focusDiagram, isFocusLost } from "../../../lost-focus.ts";

interface KeptFocus {
  onFocus: () => void;
  onBlur: (event: FocusEvent) => void;
}

/** Keeps the keys in a panel whose pressed button goes: they go on at `data-rest`, and on the board when the panel goes. */
export function useKeptFocus(panel: RefObject<HTMLElement | null>): KeptFocus {
  const isHeld = useRef(false);
  useEffect(() => {
    if (!isHeld.current || !isFocusLost()) return;
    panel.current?.querySelector<HTMLElement>("[data-rest]")?.focus({ preventScroll: true });
  });
  useEffect(
    () => () => {
      if (isHeld.current && isFocusLost()) focusDiagram();
    },
    [],
  );
  return {
    onFocus: () => {
      isHeld.current = true;
    },
    onBlur: ({ target, relatedTarget }) => {
      // A button that is gone or greyed has lost the keys to nothing; they were not taken elsewhere.
      const isGone = !target.isConnected || target.matches(":disabled");
      if (relatedTarget !== null || !isGone) isHeld.current = false;
    },
  };
}
