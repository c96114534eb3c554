import { CircleHelp, TriangleAlert } from "lucide-react";
import { listAnd } from "../../../../roles/index.ts";
import { type DrawnOtherwise, traceDeskOf } from "../../../../session/index.ts";
import { useSession } from "../../../session-context.tsx";
import { useBoard } from "../board-context.tsx";
import styles from "./nets-panel.module.css";
import { showBox } from "./show-box.ts";
import { useTrace } from "./use-trace.ts";

/** Wires that join what the picture keeps apart. */
export function OtherwiseRow({ otherwise }: { otherwise: DrawnOtherwise }) {
  const board = useBoard();
  const session = useSession();
  const desk = traceDeskOf(session);
  const { id, groups, isAsked, box } = otherwise;
  const chosen = useTrace((state) => state.shown === id) ?? false;
  const parts = groups.map((pins) => listAnd(pins));
  const words = groups.every((pins) => pins.length === 1)
    ? `Wires join ${listAnd(groups.flat())}; the picture shows no line between them.`
    : `Wires join what the picture keeps apart: ${parts.join(" | ")}.`;
  return (
    <li className={styles.row} data-chosen={chosen}>
      <button
        type="button"
        className={styles.about}
        aria-pressed={chosen}
        data-next
        onClick={() => {
          desk?.look(id);
          session.show({ selection: groups.flat() });
          showBox(board, box);
        }}
      >
        {isAsked ? (
          <CircleHelp className={styles.unsure} aria-label="Asked" />
        ) : (
          <TriangleAlert className={styles.unsure} aria-label="Drawn otherwise" />
        )}
        <span>
          <span className={styles.name}>{words}</span>
          {isAsked && (
            <span className={styles.more}>
              They are joined on the picture too if its doubtful places are.
            </span>
          )}
        </span>
      </button>
    </li>
  );
}
