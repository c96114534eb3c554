import { PanelBottom, PanelBottomClose, SquareChevronUp } from "lucide-react";
import type { ReactNode } from "react";
import { PinTable } from "../table/index.ts";
import { Boundary } from "./boundary.tsx";
import { Button, Tip } from "./controls/index.ts";
import styles from "./table-dock.module.css";
import { TABLE_HEIGHTS, type TableHeight } from "./use-layout.ts";

const HEIGHTS: Readonly<Record<TableHeight, { text: string; icon: ReactNode }>> = {
  low: { text: "Low table", icon: <PanelBottomClose aria-hidden /> },
  half: { text: "Half-height table", icon: <PanelBottom aria-hidden /> },
  full: { text: "Full-height table", icon: <SquareChevronUp aria-hidden /> },
};

interface TableDockProps {
  height: TableHeight;
  onHeight: (height: TableHeight) => void;
}

/** The pin table under the boards, in one of three heights. */
export function TableDock({ height, onHeight }: TableDockProps) {
  return (
    <section className={styles.dock} aria-label="Pin table">
      <header className={styles.head}>
        <h2>Pins</h2>
        <fieldset className={styles.heights} aria-label="Height of the pin table">
          {TABLE_HEIGHTS.map((choice) => (
            <Tip key={choice} text={HEIGHTS[choice].text}>
              <Button
                tone="quiet"
                icon={HEIGHTS[choice].icon}
                aria-label={HEIGHTS[choice].text}
                aria-pressed={choice === height}
                onClick={() => onHeight(choice)}
              />
            </Tip>
          ))}
        </fieldset>
      </header>
      <div className={styles.table}>
        <Boundary name="The pin table">
          <PinTable />
        </Boundary>
      </div>
    </section>
  );
}
