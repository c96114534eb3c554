import { type KeyboardEvent, useRef, useState } from "react";
import { distance, type Point } from "../../../base/index.ts";
import { bowed, type Quad, type Squaring, straightened } from "../../../scan/index.ts";
import { ARROW_STEPS } from "../../arrow-steps.ts";
import type { SquarePort } from "../../workers/open-square.ts";
import { BitmapLayer } from "./bitmap-layer.tsx";
import { CORNER_NAMES, GRAB } from "./corner-handles.ts";
import { Loupe } from "./loupe.tsx";
import styles from "./picture-stage.module.css";
import { PictureStage, type StageView } from "./picture-stage.tsx";
import { cornersShown, type Size, withCorner } from "./square-work.ts";
import { useBitmap } from "./use-bitmap.ts";

interface CornerStageProps {
  port: SquarePort;
  zoomSlot: Element | null;
  size: Size;
  squaring: Squaring;
  /** Changes of one `intention` are one step. */
  onSquaring: (change: (squaring: Squaring) => Squaring, intention: string) => void;
}

/** Pixels a side of what the whole picture is shown by; a close look is asked for beyond. */
const COARSE = 1600;
const SETTLED = 150;

/** The picture as it came, with the four corners of the page to be dragged. */
export function CornerStage({ port, zoomSlot, size, squaring, onSquaring }: CornerStageProps) {
  const whole = useBitmap(COARSE, (most) => port.whole(most));
  const [chosen, setChosen] = useState<number | null>(null);
  const [isHeld, setHeld] = useState(false);
  const held = useRef<{ corner: number; from: Point; start: Point; drag: string } | null>(null);
  const drags = useRef(0);
  const handles = useRef<(HTMLButtonElement | null)[]>([]);
  const corners = cornersShown(squaring, size);

  const nearest = (at: Point, view: StageView): number | null => {
    const away = corners.map((corner) => distance(view.toView(corner), view.toView(at)));
    const least = Math.min(...away);
    return least <= GRAB ? away.indexOf(least) : null;
  };
  const choose = (corner: number) => {
    setChosen(corner);
    handles.current[corner]?.focus({ preventScroll: true });
  };
  const drag = (to: Point) => {
    const what = held.current;
    if (!what) return;
    // The corner keeps its distance to the finger, which hides less of it so.
    const at: Point = [what.start[0] + to[0] - what.from[0], what.start[1] + to[1] - what.from[1]];
    onSquaring((now) => withCorner(now, what.corner, at, size), what.drag);
  };
  const release = () => {
    held.current = null;
    setHeld(false);
  };
  const nudge = (corner: number, event: KeyboardEvent) => {
    const by = ARROW_STEPS[event.key];
    if (!by || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const far = event.shiftKey ? 10 : 1;
    const [x, y] = corners[corner] as Point;
    const at: Point = [x + far * by[0], y + far * by[1]];
    onSquaring((now) => withCorner(now, corner, at, size), `nudge ${corner}`);
  };

  return (
    <PictureStage
      size={size}
      zoomSlot={zoomSlot}
      label="The picture as it came, with the page's corners"
      onTap={(at, view) => {
        const corner = nearest(at, view);
        if (corner !== null) choose(corner);
      }}
      onBegin={(from, to, view) => {
        const corner = nearest(from, view);
        if (corner === null) return false;
        choose(corner);
        setHeld(true);
        drags.current++;
        const start = corners[corner] as Point;
        held.current = { corner, from, start, drag: `drag ${drags.current}` };
        drag(to);
        return true;
      }}
      onDrag={drag}
      onDrop={(to) => {
        drag(to);
        release();
      }}
      onBroken={release}
    >
      {(view) => (
        <>
          {whole.seen && (
            <BitmapLayer
              bitmap={whole.seen.bitmap}
              box={{ left: 0, top: 0, right: size.width, bottom: size.height }}
              view={view}
            />
          )}
          <CloseLook port={port} view={view} size={size} />
          <Outline corners={corners} squaring={squaring} view={view} />
          {corners.map((corner, n) => {
            const [left, top] = view.toView(corner);
            return (
              <button
                key={CORNER_NAMES[n]}
                ref={(element) => {
                  handles.current[n] = element;
                }}
                type="button"
                className={styles.handle}
                data-held={isHeld && chosen === n}
                style={{ left, top }}
                aria-label={`Corner ${CORNER_NAMES[n]}: ${Math.round(corner[0])}, ${Math.round(corner[1])}. Arrow keys move it`}
                onFocus={() => setChosen(n)}
                onBlur={() => setChosen((now) => (now === n ? null : now))}
                onKeyDown={(event) => nudge(n, event)}
              />
            );
          })}
          {chosen !== null && (
            <Loupe
              port={port}
              size={size}
              at={corners[chosen] as Point}
              towards={[1, 3].map((by) => corners[(chosen + by) % 4] as Point)}
              view={view}
            />
          )}
        </>
      )}
    </PictureStage>
  );
}

/** The page's sides, bent as the lens bends them. */
function Outline({
  corners,
  squaring: { bow },
  view,
}: {
  corners: Quad;
  squaring: Squaring;
  view: StageView;
}) {
  const points = corners.flatMap((from, n) => {
    const to = corners[(n + 1) % 4] as Point;
    if (!bow) return [from];
    const [a, b] = [straightened(bow, from), straightened(bow, to)];
    return Array.from({ length: 12 }, (_, step): Point => {
      const share = step / 12;
      return bowed(bow, [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]);
    });
  });
  const path = points.map((point) => view.toView(point).join(",")).join(" ");
  return (
    <svg className={styles.lines} aria-hidden="true">
      <polygon className={styles.rim} points={path} />
      <polygon className={styles.line} points={path} />
    </svg>
  );
}

/** What is in sight at full resolution, where the whole shows less. */
function CloseLook({ port, view, size }: { port: SquarePort; view: StageView; size: Size }) {
  const { visible, scale } = view;
  const coarse = Math.min(1, COARSE / Math.max(size.width, size.height));
  const sharp = scale * (window.devicePixelRatio || 1);
  const isSeen = visible.right > visible.left && visible.bottom > visible.top;
  const { seen } = useBitmap(
    coarse < 1 && sharp > 1.2 * coarse && isSeen ? visible : null,
    (box) => port.spot(box),
    SETTLED,
  );
  return seen && <BitmapLayer bitmap={seen.bitmap} box={seen.ask} view={view} />;
}
