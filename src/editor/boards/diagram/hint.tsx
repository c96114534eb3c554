import { kindOf } from "../../../circuit/index.ts";
import type { PartKindName } from "../../../job/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected } from "../../session-context.tsx";
import { useBoard, useBoardState } from "./board-context.tsx";
import { backOutOfWire, endWireHere } from "./gestures/wire-gesture.ts";
import styles from "./hint.module.css";

/** One line over the board: what the tool in hand does next, with buttons for what a keyboard would do. */
export function Hint({ missing }: { missing: boolean }) {
  const board = useBoard();
  const tool = useSelected((state) => state.tool);
  const asks = useSelected((state) => state.draft?.asks ?? null);
  const laying = useBoardState((state) => state.wire !== null);
  const started = useBoardState((state) => (state.wire?.corners.length ?? 0) > 0);
  if (asks) return <p className={styles.hint}>Tap where the {asks} lead goes</p>;
  if (tool.name === "wire" && laying) {
    return (
      <div className={styles.hint}>
        <span>Tap a pin or a wire to join it</span>
        {started && (
          <Button tone="quiet" onClick={() => endWireHere(board)}>
            Goes on, not traced
          </Button>
        )}
        <Button tone="quiet" onClick={() => backOutOfWire(board)}>
          Back
        </Button>
      </div>
    );
  }
  if (tool.name === "wire") {
    return <p className={styles.hint}>Tap the pin, wire or spot where the wire starts</p>;
  }
  if (tool.name === "place") {
    const { title } = kindOf(tool.kind as PartKindName);
    const more = tool.kind === "module" ? ", or drag its box" : "; R turns it";
    return (
      <p className={styles.hint}>
        Tap where the {title} goes{more}
      </p>
    );
  }
  return missing ? (
    <p className={styles.hint} role="alert">
      The picture of this sheet is not with the job. Import it again to see it.
    </p>
  ) : null;
}
