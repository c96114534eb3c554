import { useLayoutEffect, useRef, useState } from "react";
import type { Side } from "../../../plug/index.ts";

const TURN_MS = 420;

const stillness = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

/**
 * How far the face has turned over to `side`: runs from -1 (still the other side's mirror image)
 * to 1 when the side changes, and is 1 at rest. Multiply distances from the mirror axis by it.
 */
export function useTurn(side: Side): number {
  const [turn, setTurn] = useState(1);
  const shown = useRef(side);
  useLayoutEffect(() => {
    if (shown.current === side) return;
    shown.current = side;
    if (stillness()) return;
    setTurn(-1);
    const start = performance.now();
    let frame = requestAnimationFrame(function step(now) {
      const share = Math.min(1, Math.max(0, (now - start) / TURN_MS));
      setTurn(-Math.cos(share * Math.PI));
      if (share < 1) frame = requestAnimationFrame(step);
    });
    return () => {
      cancelAnimationFrame(frame);
      setTurn(1);
    };
  }, [side]);
  return turn;
}
