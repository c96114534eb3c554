import { useEffect, useRef, useSyncExternalStore } from "react";
import { createStore, drawnOf, link, linkBetween, type Session } from "../session/index.ts";
import styles from "./link-drag.module.css";
import { useSelected, useSession } from "./session-context.tsx";

/** A place in the window, CSS pixels. */
export interface ClientPoint {
  readonly clientX: number;
  readonly clientY: number;
}
interface Place {
  readonly x: number;
  readonly y: number;
}
type Hit = (clientX: number, clientY: number) => string | null;
type Lookup = (ref: string) => Place | null;
interface Drag {
  readonly from: string;
  readonly start: Place;
  readonly at: Place;
}

const targets = new Set<Hit>();
const lookups = new Set<Lookup>();
const drags = createStore<{ readonly drag: Drag | null }>({ drag: null });

/** Starts pulling a line from a pin or a cavity; the overlay follows the pointer until it lifts. */
export function beginLinkDrag(ref: string, { clientX, clientY }: ClientPoint): void {
  const at = { x: clientX, y: clientY };
  drags.set(() => ({ drag: { from: ref, start: at, at } }));
}

/** A board says what pin or cavity lies at a place in the window. Returns the call that takes it back. */
export function registerLinkTarget(hit: Hit): () => void {
  targets.add(hit);
  return () => targets.delete(hit);
}

/** A board says where a pin or cavity shows in the window; null while it is out of sight. */
export function registerAnchors(lookup: Lookup): () => void {
  lookups.add(lookup);
  return () => lookups.delete(lookup);
}

function firstOf<T>(asked: Iterable<() => T | null>): T | null {
  for (const ask of asked) {
    const found = ask();
    if (found !== null) return found;
  }
  return null;
}

const targetAt = (x: number, y: number) => firstOf([...targets].map((hit) => () => hit(x, y)));
const anchorOf = (ref: string) => firstOf([...lookups].map((lookup) => () => lookup(ref)));

function drop(session: Session, drag: Drag) {
  const target = targetAt(drag.at.x, drag.at.y);
  if (target === null || target === drag.from) return;
  const tie = linkBetween(drawnOf(session.get()), drag.from, target);
  if (!tie) {
    session.show({
      notice: { tone: "error", text: "Drag from a pin of a module to a cavity of a plug." },
    });
    return;
  }
  session.edit(`Tie ${tie.pin} to ${tie.cavity}`, (draft) => link(draft, tie.pin, tie.cavity));
  session.show({ selection: [tie.cavity], notice: null });
}

/** The rubber line of a drag, and the links of the whole job while they are shown. */
export function LinkOverlay() {
  const session = useSession();
  const { drag } = useSyncExternalStore(drags.subscribe, drags.get);
  const showMatches = useSelected((state) => state.showMatches);
  const dragging = drag !== null;

  useEffect(() => {
    if (!dragging) return;
    const stop = () => drags.set(() => ({ drag: null }));
    const move = (event: PointerEvent) =>
      drags.set((now) =>
        now.drag ? { drag: { ...now.drag, at: { x: event.clientX, y: event.clientY } } } : now,
      );
    const up = () => {
      const now = drags.get().drag;
      stop();
      if (now) drop(session, now);
    };
    const key = (event: KeyboardEvent) => {
      if (event.key !== "Escape") return;
      event.stopPropagation();
      stop();
    };
    addEventListener("pointermove", move);
    addEventListener("pointerup", up);
    addEventListener("pointercancel", stop);
    addEventListener("keydown", key, true);
    return () => {
      removeEventListener("pointermove", move);
      removeEventListener("pointerup", up);
      removeEventListener("pointercancel", stop);
      removeEventListener("keydown", key, true);
    };
  }, [dragging, session]);

  return (
    <svg className={styles.overlay} aria-hidden="true">
      {showMatches && <MatchLines />}
      {drag && (
        <>
          <line
            className={styles.rubber}
            x1={drag.start.x}
            y1={drag.start.y}
            x2={drag.at.x}
            y2={drag.at.y}
          />
          <circle className={styles.end} cx={drag.at.x} cy={drag.at.y} r={7} />
        </>
      )}
    </svg>
  );
}

/** One line a link, kept on its two anchors while boards pan, zoom and flip. */
function MatchLines() {
  const group = useRef<SVGGElement>(null);
  const links = useSelected((state) => state.job.links);
  const selection = useSelected((state) => state.selection);
  useEffect(() => {
    let frame = 0;
    const draw = () => {
      const lines = group.current?.children ?? [];
      links.forEach((one, index) => {
        const path = lines[index];
        if (!path) return;
        const a = anchorOf(one.pin);
        const b = anchorOf(one.cavity);
        const bend = a && b ? Math.max(24, Math.abs(b.x - a.x) / 3) : 0;
        path.setAttribute(
          "d",
          a && b ? `M${a.x} ${a.y}C${a.x + bend} ${a.y} ${b.x - bend} ${b.y} ${b.x} ${b.y}` : "",
        );
      });
      frame = requestAnimationFrame(draw);
    };
    frame = requestAnimationFrame(draw);
    return () => cancelAnimationFrame(frame);
  }, [links]);
  return (
    <g ref={group}>
      {links.map((one) => (
        <path
          key={`${one.pin} ${one.cavity}`}
          className={styles.match}
          data-chosen={selection.includes(one.pin) || selection.includes(one.cavity)}
        />
      ))}
    </g>
  );
}
