import { ZoomIn, ZoomOut } from "lucide-react";
import { type KeyboardEvent, type PointerEvent, useRef, useState } from "react";
import { distance, type Point } from "../../../base/index.ts";
import { Button } from "../../app/controls/index.ts";
import styles from "./photo-clicks.module.css";

interface PhotoClicksProps {
  url: string;
  /** Pixels. */
  width: number;
  height: number;
  clicks: readonly Point[];
  marks: readonly string[];
  onClicks: (clicks: readonly Point[]) => void;
}

const ZOOMS = [1, 1.5, 2, 3, 4, 6];
/** Screen pixels within which a touch takes hold of a dot that is there already. */
const GRAB = 16;

/** The photo with a dot on every cavity: a click puts one down, a dot can be dragged into place. */
export function PhotoClicks({ url, width, height, clicks, marks, onClicks }: PhotoClicksProps) {
  const [zoom, setZoom] = useState(0);
  const [held, setHeld] = useState<number | null>(null);
  const [aim, setAim] = useState<Point | null>(null);
  const photo = useRef<HTMLDivElement>(null);
  const start = useRef<{ x: number; y: number } | null>(null);

  const pixelAt = (event: PointerEvent): Point => {
    const box = photo.current?.getBoundingClientRect();
    if (!box || box.width === 0) return [0, 0];
    return clamp([
      ((event.clientX - box.left) * width) / box.width,
      ((event.clientY - box.top) * height) / box.height,
    ]);
  };
  const clamp = ([x, y]: Point): Point => [
    Math.min(width, Math.max(0, x)),
    Math.min(height, Math.max(0, y)),
  ];

  const down = (event: PointerEvent) => {
    if (event.button !== 0) return;
    start.current = { x: event.clientX, y: event.clientY };
    const box = photo.current?.getBoundingClientRect();
    const reach = (GRAB * width) / (box?.width ?? width);
    const at = pixelAt(event);
    const found = clicks.findIndex((click) => distance(click, at) <= reach);
    if (found < 0) return;
    photo.current?.setPointerCapture(event.pointerId);
    setHeld(found);
  };
  const move = (event: PointerEvent) => {
    if (held === null) return;
    const at = pixelAt(event);
    onClicks(clicks.map((click, index) => (index === held ? at : click)));
  };
  const up = (event: PointerEvent) => {
    const from = start.current;
    start.current = null;
    if (held !== null) {
      setHeld(null);
      return;
    }
    // A finger that scrolled the picture has not clicked a cavity.
    if (!from || Math.hypot(event.clientX - from.x, event.clientY - from.y) > 7) return;
    onClicks([...clicks, pixelAt(event)]);
  };
  const key = (event: KeyboardEvent) => {
    const step = width * (event.shiftKey ? 0.002 : 0.02);
    const steps: Record<string, Point> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, -step],
      ArrowDown: [0, step],
    };
    const by = steps[event.key];
    const from: Point = aim ?? [width / 2, height / 2];
    if (by) setAim(clamp([from[0] + by[0], from[1] + by[1]]));
    else if (event.key === "Enter" || event.key === " ") onClicks([...clicks, from]);
    else return;
    event.preventDefault();
  };

  return (
    <div>
      <div className={styles.zoom}>
        <Button
          icon={<ZoomOut aria-hidden />}
          aria-label="Show the picture smaller"
          disabled={zoom === 0}
          onClick={() => setZoom(zoom - 1)}
        />
        <Button
          icon={<ZoomIn aria-hidden />}
          aria-label="Show the picture larger"
          disabled={zoom === ZOOMS.length - 1}
          onClick={() => setZoom(zoom + 1)}
        />
      </div>
      <div className={styles.frame}>
        <div
          ref={photo}
          className={styles.photo}
          style={{ width: `${(ZOOMS[zoom] ?? 1) * 100}%`, aspectRatio: `${width} / ${height}` }}
          role="application"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys aim on it, Enter puts a cavity down
          tabIndex={0}
          aria-label="Photo of the plug. Click the cavities in order, or aim with the arrow keys and press Enter."
          onPointerDown={down}
          onPointerMove={move}
          onPointerUp={up}
          onPointerCancel={() => {
            start.current = null;
            setHeld(null);
          }}
          onKeyDown={key}
        >
          <img src={url} alt="" draggable={false} />
          {clicks.map(([x, y], index) => (
            <span
              // biome-ignore lint/suspicious/noArrayIndexKey: a dot is its place in the order of marks
              key={index}
              className={styles.dot}
              style={{ left: `${(x / width) * 100}%`, top: `${(y / height) * 100}%` }}
            >
              {marks[index] ?? index + 1}
            </span>
          ))}
          {aim && (
            <span
              className={styles.aim}
              style={{ left: `${(aim[0] / width) * 100}%`, top: `${(aim[1] / height) * 100}%` }}
            />
          )}
        </div>
      </div>
    </div>
  );
}
