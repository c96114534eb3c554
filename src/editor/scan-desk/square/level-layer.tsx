import { useState } from "react";
import { distance, type Point } from "../../../base/index.ts";
import { levelOf, type Squaring } from "../../../scan/index.ts";
import styles from "./picture-stage.module.css";
import type { StageView } from "./picture-stage.tsx";
import { levelled } from "./square-work.ts";

type Line = readonly [Point, Point];

/** A shorter line tells no direction, pixels of the result. */
const LEAST_LINE = 20;

/** A drag along something that is to lie level or upright turns the page so that it does. */
export function useLevelGestures(
  onSquaring: (change: (squaring: Squaring) => Squaring, intention?: string) => void,
) {
  const [line, setLine] = useState<Line | null>(null);
  return {
    line,
    gestures: {
      onBegin: (from: Point, to: Point) => {
        setLine([from, to]);
        return true;
      },
      onDrag: (to: Point) => setLine((now) => now && [now[0], to]),
      onDrop: (to: Point) => {
        if (line && distance(line[0], to) >= LEAST_LINE) {
          const by = levelOf(line[0], to);
          onSquaring((now) => levelled(now, by));
        }
        setLine(null);
      },
      onBroken: () => setLine(null),
    },
  };
}

export function LevelLayer({ line, view }: { line: Line | null; view: StageView }) {
  if (!line) return null;
  const [[x1, y1], [x2, y2]] = [view.toView(line[0]), view.toView(line[1])];
  const ends = { x1, y1, x2, y2 };
  return (
    <svg className={styles.lines} aria-hidden="true">
      <line className={styles.rim} {...ends} />
      <line className={styles.line} {...ends} />
    </svg>
  );
}
