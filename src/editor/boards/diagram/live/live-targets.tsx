import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from "react";
import type { Point } from "../../../../base/index.ts";
import {
  operablesOf,
  type PartShape,
  partsIn,
  partWords,
  positionOf,
  toView,
  viewBox,
} from "../../../../session/index.ts";
import { ARROW_STEPS } from "../../../arrow-steps.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { useBoard, useBoardState } from "../board-context.tsx";
import { type Touch, touchSwitch } from "./live-gesture.ts";
import styles from "./live-targets.module.css";

/** More than these in sight are too many to walk through: the list beside the board has them all. */
const MOST = 150;
const LEAST_SIDE = 44;

/**
 * One button over everything on the board that can be operated or watched, for the keyboard and
 * for those who are read to. Pointers are followed by the canvas beneath. Arrow keys go from one
 * to the next; Enter or Space works a switch, held down as long as the key is.
 */
export function LiveTargets() {
  const board = useBoard();
  const session = useSession();
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const sheet = useSelected((state) => state.sheet);
  const operate = useSelected((state) => state.operate);
  const chosen = useSelected((state) => state.selection[0]);
  const size = useBoardState((state) => state.size);
  const camera = useRested(useBoardState((state) => state.cameras[sheet ?? ""]));
  const list = useRef<HTMLElement>(null);
  const held = useRef<Touch | null>(null);

  const shapes = useMemo(() => {
    const scene = board.scene();
    if (!scene || !camera) return [];
    const { switches, fuses, plugged, loads } = operablesOf(job, machine);
    const wanted = new Set([...switches, ...fuses, ...plugged, ...loads].map((part) => part.id));
    return partsIn(scene, viewBox(camera, size))
      .filter(({ part }) => wanted.has(part.id))
      .slice(0, MOST);
  }, [board, job, machine, camera, size]);
  if (!camera) return null;
  const entry = shapes.find(({ part }) => part.id === chosen) ?? shapes[0];

  const press = ({ part }: PartShape) => {
    session.show({ selection: [part.id] });
    if (part.kind !== "switch" || held.current) return;
    held.current = touchSwitch(session, part);
    held.current?.down();
  };
  const letGo = () => {
    held.current?.up();
    held.current = null;
  };
  const keyDown = (shape: PartShape, event: KeyboardEvent<HTMLButtonElement>) => {
    const way = ARROW_STEPS[event.key];
    if (way) {
      const next = nearestAlong(shapes, shape, way);
      const button =
        next && list.current?.querySelector(`[data-part="${CSS.escape(next.part.id)}"]`);
      if (button instanceof HTMLButtonElement) button.focus();
      event.preventDefault();
    } else if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      if (!event.repeat) press(shape);
    }
  };
  return (
    <section ref={list} className={styles.targets} aria-label="On the drawing">
      {shapes.map((shape) => {
        const { part, box } = shape;
        const [left, top] = toView(camera, [box.left, box.top]);
        const [right, bottom] = toView(camera, [box.right, box.bottom]);
        const wide = Math.max(LEAST_SIDE, right - left);
        const high = Math.max(LEAST_SIDE, bottom - top);
        const state = operate.live?.parts[part.id];
        const words = part.kind === "switch" ? positionOf(part, operate) : partWords(part, state);
        const name = [part.id, part.label].filter(Boolean).join(" ");
        return (
          <button
            key={part.id}
            type="button"
            className={styles.target}
            data-part={part.id}
            data-on={state?.on ?? false}
            style={{
              left: (left + right - wide) / 2,
              top: (top + bottom - high) / 2,
              width: wide,
              height: high,
            }}
            aria-label={words ? `${name}: ${words}` : name}
            tabIndex={shape === entry ? 0 : -1}
            onFocus={() => session.show({ selection: [part.id] })}
            onBlur={letGo}
            onKeyDown={(event) => keyDown(shape, event)}
            onKeyUp={(event) => {
              if (event.key === "Enter" || event.key === " ") {
                event.preventDefault();
                letGo();
              }
            }}
            // Only readers and the like send a click here: pressed and let go at once.
            onClick={() => {
              press(shape);
              letGo();
            }}
          />
        );
      })}
    </section>
  );
}

/** Milliseconds after which a view counts as resting. */
const REST = 120;

/** The value once it has stood still: what nobody sees moving need not move along. */
function useRested<T>(value: T): T {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setRested(value), REST);
    return () => clearTimeout(timer);
  }, [value]);
  return rested;
}

/** The nearest one that lies mostly that way. */
function nearestAlong(
  shapes: readonly PartShape[],
  from: PartShape,
  [dx, dy]: Point,
): PartShape | null {
  let best: PartShape | null = null;
  let nearest = Number.POSITIVE_INFINITY;
  for (const shape of shapes) {
    if (shape === from) continue;
    const x = shape.part.at[0] - from.part.at[0];
    const y = shape.part.at[1] - from.part.at[1];
    const along = x * dx + y * dy;
    const across = Math.abs(x * dy) + Math.abs(y * dx);
    if (along <= 0 || across > along * 2) continue;
    if (along + across < nearest) {
      nearest = along + across;
      best = shape;
    }
  }
  return best;
}
