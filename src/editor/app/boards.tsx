import { DiagramBoard } from "../boards/diagram/index.ts";
import { PlugBoard } from "../boards/plug/index.ts";
import styles from "./boards.module.css";
import { Boundary } from "./boundary.tsx";
import { Divider } from "./divider.tsx";
import { useJobDesk } from "./job-desk-context.tsx";

interface BoardsProps {
  stacked: boolean;
  /** The diagram has all the room; the plug is kept as it is. */
  alone: boolean;
  share: number;
  onShare: (share: number) => void;
}

/** The two boards with the divider between them. */
export function Boards({ stacked, alone, share, onShare }: BoardsProps) {
  const desk = useJobDesk();
  const both = `minmax(0, ${share}fr) auto minmax(0, ${1 - share}fr)`;
  const sizes = alone ? "minmax(0, 1fr)" : both;
  return (
    <div
      className={styles.boards}
      style={stacked ? { gridTemplateRows: sizes } : { gridTemplateColumns: sizes }}
    >
      <section className={styles.board} aria-label="Diagram">
        <Boundary name="The diagram board">
          <DiagramBoard onOpenDemo={desk.openDemo} />
        </Boundary>
      </section>
      {!alone && <Divider stacked={stacked} share={share} onChange={onShare} />}
      <section className={styles.board} aria-label="Plug" hidden={alone}>
        <Boundary name="The plug board">
          <PlugBoard />
        </Boundary>
      </section>
    </div>
  );
}
