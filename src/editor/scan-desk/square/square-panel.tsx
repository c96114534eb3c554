import { FlipHorizontal2, Maximize, RotateCcw, RotateCw, ScanSearch } from "lucide-react";
import type { Bow, Squaring } from "../../../scan/index.ts";
import { Button } from "../../app/controls/index.ts";
import { Tick } from "../../boards/plug/fields.tsx";
import { SettingSlider } from "./setting-slider.tsx";
import styles from "./square-panel.module.css";
import {
  MOST_LEVEL,
  mirrored,
  type Size,
  turned,
  withBow,
  withCorners,
  withMargin,
} from "./square-work.ts";

interface SquarePanelProps {
  size: Size;
  squaring: Squaring;
  /** What was found of corners, or is being looked for. */
  says: string;
  /** Of the lens, as the page's sides show it; null where they are straight. */
  bow: Bow | null;
  isLooking: boolean;
  /** Whether parts drawn on the sheet forbid turning the picture over. */
  isDrawn: boolean;
  onSquaring: (change: (squaring: Squaring) => Squaring, intention?: string) => void;
  onFind: () => void;
}

/** Everything about squaring up that is not dragged on the picture. */
export function SquarePanel(props: SquarePanelProps) {
  const { size, squaring, says, bow, isLooking, isDrawn, onSquaring, onFind } = props;
  const shownBow = squaring.bow ?? bow;
  return (
    <div className={styles.panel}>
      <section className={styles.group}>
        <h3>Corners</h3>
        <p className={styles.says} role="status">
          {says}
        </p>
        <div className={styles.row}>
          <Button icon={<ScanSearch aria-hidden />} disabled={isLooking} onClick={onFind}>
            Find them
          </Button>
          <Button
            icon={<Maximize aria-hidden />}
            disabled={squaring.corners === null}
            onClick={() => onSquaring((now) => withCorners(now, null, size))}
          >
            Whole picture
          </Button>
        </div>
        <SettingSlider
          label="Shown beyond them"
          value={squaring.margin}
          least={0}
          most={Math.max(50, Math.round(Math.max(size.width, size.height) / 20))}
          step={1}
          text={`${squaring.margin} px`}
          disabled={squaring.corners === null}
          onChange={(margin) => onSquaring((now) => withMargin(now, margin), "margin")}
        />
      </section>
      <section className={styles.group}>
        <h3>Turn</h3>
        <div className={styles.row}>
          <Button
            icon={<RotateCcw aria-hidden />}
            onClick={() => onSquaring((now) => turned(now, -1, size))}
          >
            Left
          </Button>
          <Button
            icon={<RotateCw aria-hidden />}
            onClick={() => onSquaring((now) => turned(now, 1, size))}
          >
            Right
          </Button>
          <Button
            icon={<FlipHorizontal2 aria-hidden />}
            aria-pressed={squaring.isMirrored}
            disabled={isDrawn}
            aria-describedby={isDrawn ? "mirror-refused" : undefined}
            onClick={() => onSquaring((now) => mirrored(now, size))}
          >
            Mirror
          </Button>
        </div>
        {isDrawn && (
          <p id="mirror-refused" className={styles.soft}>
            Parts are drawn on this sheet: mirrored, their pins would be on the wrong side.
          </p>
        )}
        <SettingSlider
          label="Tilt"
          value={squaring.level}
          least={-MOST_LEVEL}
          most={MOST_LEVEL}
          step={0.1}
          text={`${squaring.level.toFixed(1)}°`}
          onChange={(level) => onSquaring((now) => ({ ...now, level }), "level")}
        />
      </section>
      <section className={styles.group}>
        <h3>Crop</h3>
        <div className={styles.row}>
          <p className={styles.grow}>
            {squaring.crop
              ? `${squaring.crop.right - squaring.crop.left + 1} × ${squaring.crop.bottom - squaring.crop.top + 1} px stay.`
              : "Nothing is cut off."}
          </p>
          <Button
            disabled={squaring.crop === null}
            onClick={() => onSquaring((now) => ({ ...now, crop: null }))}
          >
            Keep all
          </Button>
        </div>
      </section>
      {/* It is found late, and what is under what comes late is missed by a finger on its way there. */}
      {shownBow && squaring.corners && (
        <section className={styles.group}>
          <h3>Lens</h3>
          <Tick
            label="Straighten the lens’s bow"
            value={squaring.bow !== null}
            onChange={(isOn) => onSquaring((now) => withBow(now, isOn ? shownBow : null, size))}
          />
          <p className={styles.soft}>{bowText(shownBow)}</p>
        </section>
      )}
    </div>
  );
}

/** What a bow does to the picture, as one sees it: how far it moves a corner of the picture. */
function bowText({ k, unit }: Bow): string {
  const shift = Math.round(Math.abs(k) * unit);
  const way = k < 0 ? "outwards" : "inwards";
  return `Straight edges bend ${way}: k ${k.toFixed(3)}, up to ${shift} px in the picture’s corners.`;
}
