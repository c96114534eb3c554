import { Check, CircleCheck, CircleHelp } from "lucide-react";
import { listAnd } from "../../../../roles/index.ts";
import { type NetProposal, placeAsked, traceDeskOf } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSession } from "../../../session-context.tsx";
import { useBoard } from "../board-context.tsx";
import { doubtWords, netWords } from "./net-words.ts";
import styles from "./nets-panel.module.css";
import { showBox } from "./show-box.ts";
import { useTrace } from "./use-trace.ts";

interface NetRowProps {
  proposal: NetProposal;
  /** Whether it can be drawn now. */
  ready: boolean;
  onAccept: () => void;
  onLeave: () => void;
}

/** One net of the picture that the drawing lacks. */
export function NetRow({ proposal, ready, onAccept, onLeave }: NetRowProps) {
  const board = useBoard();
  const desk = traceDeskOf(useSession());
  const { net, kind, groups, doubts } = proposal;
  const chosen = useTrace((state) => state.shown === net.id) ?? false;
  const questions = doubts.flatMap((doubt) => (doubt.why === "asked" ? doubt.questions : []));
  const [question] = questions;
  const isOpen = doubts.some(({ why }) => why === "goes-on" || why === "one-pin");
  const apart = groups.map((pins) => listAnd(pins));
  const choose = () => {
    desk?.look(net.id);
    showBox(board, net.box);
  };
  const lookCloser = () => {
    choose();
    const end = desk?.places().find(({ stretch }) => stretch === "ends");
    const place = question ? placeAsked(question) : end;
    if (place) desk?.ask(place);
  };
  return (
    <li className={styles.row} data-chosen={chosen}>
      <button
        type="button"
        className={styles.about}
        aria-pressed={chosen}
        data-next
        onClick={choose}
      >
        {doubts.length === 0 ? (
          <CircleCheck className={styles.sure} aria-label="Sure" />
        ) : (
          <CircleHelp className={styles.unsure} aria-label="Not sure" />
        )}
        <span>
          <span className={styles.name}>{netWords(net)}</span>
          {kind === "partly" && (
            <span className={styles.more}>Drawn apart: {apart.join(" | ")}.</span>
          )}
          {doubts.map((doubt) => (
            <span key={doubtWords(doubt)} className={styles.more}>
              {doubtWords(doubt)}
            </span>
          ))}
        </span>
      </button>
      <span className={styles.acts}>
        {(question || isOpen) && (
          <Button icon={<CircleHelp aria-hidden />} onClick={lookCloser}>
            Look
          </Button>
        )}
        <Button icon={<Check aria-hidden />} disabled={!ready} onClick={onAccept}>
          Accept
        </Button>
        <Button tone="quiet" onClick={onLeave}>
          Leave
        </Button>
      </span>
    </li>
  );
}
