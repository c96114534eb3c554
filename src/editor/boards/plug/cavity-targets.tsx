import type { KeyboardEvent } from "react";
import type { Point } from "../../../base/index.ts";
import type { Direction } from "../../../plug/index.ts";
import { type CavityFacts, describeCavity } from "./cavity-facts.ts";
import styles from "./face-canvas.module.css";

interface CavityTargetsProps {
  placed: readonly { readonly facts: CavityFacts; readonly at: Point }[];
  /** Distance of the nearest neighbours, pixels. */
  spacing: number;
  selection: readonly string[];
  /** Arrow keys on a chosen cavity are then for moving it. */
  arranging: boolean;
  step: (from: CavityFacts, direction: Direction) => CavityFacts | null;
  onTap: (facts: CavityFacts) => void;
  onKey: (facts: CavityFacts, event: KeyboardEvent) => void;
}

const ARROWS: Readonly<Record<string, Direction>> = {
  ArrowLeft: "left",
  ArrowRight: "right",
  ArrowUp: "up",
  ArrowDown: "down",
};

/**
 * One button over each drawn cavity, for the keyboard and for those who are read to. Pointers
 * are followed by the canvas beneath, which also tells taps from drags.
 */
export function CavityTargets(props: CavityTargetsProps) {
  const { placed, spacing, selection } = props;
  const side = Math.min(Math.max(44, spacing * 0.62), Math.max(24, spacing));
  const chosen = placed.find(({ facts }) => selection.includes(facts.ref));
  const entry = (chosen ?? placed[0])?.facts.index;

  const press = (facts: CavityFacts, event: KeyboardEvent<HTMLButtonElement>) => {
    const direction = ARROWS[event.key];
    const moving = props.arranging && selection.includes(facts.ref);
    if (direction && !moving && !event.altKey && !event.ctrlKey && !event.metaKey) {
      const next = props.step(facts, direction);
      const list = event.currentTarget.parentElement;
      const button = next && list?.querySelector(`[data-index="${next.index}"]`);
      if (button instanceof HTMLButtonElement) button.focus();
      event.preventDefault();
      return;
    }
    props.onKey(facts, event);
  };

  return (
    <div className={styles.targets}>
      {placed.map(({ facts, at }) => (
        <button
          key={`${facts.index} ${facts.mark}`}
          type="button"
          className={styles.target}
          data-index={facts.index}
          style={{ left: at[0] - side / 2, top: at[1] - side / 2, width: side, height: side }}
          aria-label={describeCavity(facts)}
          aria-pressed={selection.includes(facts.ref)}
          tabIndex={facts.index === entry ? 0 : -1}
          onKeyDown={(event) => press(facts, event)}
          onClick={(event) => {
            // A click of the pointer has been a tap of the canvas already; keys and readers send 0.
            if (event.detail !== 0) return;
            props.onTap(facts);
          }}
        />
      ))}
    </div>
  );
}
