import { CheckCheck, X } from "lucide-react";
import { useEffect, useRef } from "react";
import {
  drawnOf,
  type NetDifference,
  type TraceDesk,
  traceDeskOf,
} from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { useBoard } from "../board-context.tsx";
import { drawnWords } from "./make-wires.ts";
import { NetRow } from "./net-row.tsx";
import styles from "./nets-panel.module.css";
import { netsSummary } from "./nets-summary.ts";
import { OtherwiseRow } from "./otherwise-row.tsx";
import { proposalsShown } from "./proposals-shown.ts";
import { SaidRows } from "./said-rows.tsx";
import { useKeptFocus } from "./use-kept-focus.ts";
import { useTrace } from "./use-trace.ts";

/** Milliseconds in which the board has taken its new size. */
const SETTLES = 150;

/** Every net of the picture that the drawing lacks, to be accepted or left, and what is drawn otherwise. */
export function NetsPanel() {
  const session = useSession();
  const desk = traceDeskOf(session);
  const open = useTrace((state) => state.isListOpen);
  const isOld = useTrace((state) => state.isOld) ?? false;
  // What the list says hangs on these.
  useTrace((state) => state.traced);
  useTrace((state) => state.left);
  useSelected(drawnOf);
  const shown = useSelected((state) => state.scanDesk && !state.operate.on);
  const board = useBoard();
  useEffect(() => {
    if (!open) return;
    // The list takes some of the board's room: the whole sheet is what it is about.
    const timer = setTimeout(board.fit, SETTLES);
    return () => clearTimeout(timer);
  }, [board, open]);
  const found = open && shown ? desk?.difference() : null;
  return desk && found && <Lines desk={desk} found={found} isOld={isOld} />;
}

interface LinesProps {
  desk: TraceDesk;
  found: NetDifference;
  isOld: boolean;
}

function Lines({ desk, found, isOld }: LinesProps) {
  const session = useSession();
  const panel = useRef<HTMLElement>(null);
  const keepFocus = useKeptFocus(panel);
  const isLookedAt = useTrace((state) => state.place !== null) ?? false;
  const ready = desk.holds();
  // Older lines know parts by older names, and by them nothing is called drawn otherwise.
  const difference = ready ? found : { ...found, otherwise: [] };
  const proposals = proposalsShown(desk);
  const sure = proposals.filter(({ doubts }) => doubts.length === 0);
  const left = found.proposals.flatMap((one) => (proposals.includes(one) ? [] : [one.net]));
  const answers = desk.answers();
  const rows = [proposals, difference.otherwise, answers, left];
  const hasRows = rows.some(({ length }) => length > 0);
  const accept = (nets: Parameters<typeof desk.draw>[0], label: string) => {
    const drawn = desk.draw(nets, label);
    if (!drawn) return;
    session.show({ notice: { tone: "info", text: drawnWords(drawn) } });
  };
  return (
    <section
      ref={panel}
      className={styles.panel}
      data-aside={isLookedAt}
      data-empty={!hasRows}
      aria-label="Lines of the picture"
      {...keepFocus}
    >
      <header className={styles.head}>
        <p role="status">
          {netsSummary(difference, proposals.length, left.length, isOld && !ready)}
        </p>
        {/* With none sure it stays: what a late answer moves is missed by a finger on its way there. */}
        {proposals.length > 0 && (
          <Button
            className={styles.accept as string}
            tone="primary"
            icon={<CheckCheck aria-hidden />}
            disabled={!ready || sure.length === 0}
            onClick={() =>
              accept(
                sure.map(({ net }) => net),
                sure.length === 1 ? "Accept a line" : `Accept ${sure.length} lines`,
              )
            }
          >
            Accept all sure ones ({sure.length})
          </Button>
        )}
        <Button
          className={styles.close as string}
          tone="quiet"
          icon={<X aria-hidden />}
          aria-label="Close the list of lines"
          data-rest
          onClick={desk.closeList}
        />
      </header>
      {hasRows && (
        <div className={styles.list}>
          <ul className={styles.rows}>
            {proposals.map((proposal) => (
              <NetRow
                key={proposal.net.id}
                proposal={proposal}
                ready={ready}
                onAccept={() => accept([proposal.net], "Accept a line")}
                onLeave={() => desk.leave(proposal.net.id)}
              />
            ))}
            {difference.otherwise.map((one) => (
              <OtherwiseRow key={one.id} otherwise={one} />
            ))}
          </ul>
          {answers.length + left.length > 0 && <SaidRows answers={answers} left={left} />}
        </div>
      )}
    </section>
  );
}
