import { Power } from "lucide-react";
import { commandNamed, drawnOf } from "../../../../session/index.ts";
import { keysOf } from "../../../app/command-button.tsx";
import { Button, Tip } from "../../../app/controls/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import styles from "./operate-button.module.css";

/** The way in, on the board itself: under the thumb on a phone, in the corner on a desk. */
export function OperateButton() {
  const session = useSession();
  const drawn = useSelected((state) => state.job.diagram.parts.length > 0);
  const wired = useSelected((state) => drawnOf(state).diagram.wires.length > 0);
  const on = useSelected((state) => state.operate.on);
  const busy = useSelected(
    (state) => state.draft !== null || state.tool.name !== "select" || state.scanDesk,
  );
  if (!drawn || on || busy) return null;
  const command = commandNamed("operate");
  return (
    <Tip text={`Press switches on the drawing and see what is live (${keysOf(command)})`}>
      <Button
        className={styles.button as string}
        icon={<Power aria-hidden />}
        disabled={!wired}
        onClick={() => command.run(session)}
      >
        {wired ? command.label : `${command.label}: trace a wire first`}
      </Button>
    </Tip>
  );
}
