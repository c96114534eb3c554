import { type PointerEvent as ReactPointerEvent, useRef } from "react";
import styles from "./divider.module.css";
import { clampShare } from "./use-layout.ts";

interface DividerProps {
  /** Whether the two things it parts lie one above the other. */
  stacked: boolean;
  share: number;
  onChange: (share: number) => void;
}

const STEP = 0.04;

/** The bar between the two boards: dragged, or moved by the arrow keys. */
export function Divider({ stacked, share, onChange }: DividerProps) {
  const bar = useRef<HTMLDivElement>(null);

  const drag = (event: ReactPointerEvent) => {
    const room = bar.current?.parentElement?.getBoundingClientRect();
    if (!room || !bar.current?.hasPointerCapture(event.pointerId)) return;
    const part = stacked
      ? (event.clientY - room.top) / room.height
      : (event.clientX - room.left) / room.width;
    onChange(clampShare(part));
  };

  return (
    // biome-ignore lint/a11y/useSemanticElements: an <hr> can neither be focused nor dragged
    <div
      ref={bar}
      className={styles.divider}
      data-stacked={stacked}
      role="separator"
      aria-label="Divider between the boards"
      aria-orientation={stacked ? "horizontal" : "vertical"}
      aria-valuemin={20}
      aria-valuemax={80}
      aria-valuenow={Math.round(share * 100)}
      tabIndex={0}
      onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
      onPointerMove={drag}
      onDoubleClick={() => onChange(0.5)}
      onKeyDown={(event) => {
        if (event.key === (stacked ? "ArrowUp" : "ArrowLeft")) onChange(clampShare(share - STEP));
        else if (event.key === (stacked ? "ArrowDown" : "ArrowRight"))
          onChange(clampShare(share + STEP));
        else return;
        event.preventDefault();
      }}
    />
  );
}
