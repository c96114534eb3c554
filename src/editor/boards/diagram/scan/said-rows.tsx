import { Undo2 } from "lucide-react";
import type { LineAnswer } from "../../../../job/index.ts";
import { placeAnswered, traceDeskOf, type WholeNet } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSession } from "../../../session-context.tsx";
import { useBoard } from "../board-context.tsx";
import { netWords } from "./net-words.ts";
import styles from "./nets-panel.module.css";
import { PlacePicture } from "./place-picture.tsx";
import { showBox } from "./show-box.ts";

interface SaidRowsProps {
  answers: readonly LineAnswer[];
  /** Proposed nets that the user leaves as they are. */
  left: readonly WholeNet[];
}

/** What the user said of lines of the picture, each to be taken back: a wrong word of it would stay unseen. */
export function SaidRows({ answers, left }: SaidRowsProps) {
  return (
    <section className={styles.said} aria-label="What you said">
      <h3 className={styles.title}>What you said</h3>
      <ul className={styles.rows}>
        {answers.map((answer) => (
          <AnswerRow key={answer.at.join(" ")} answer={answer} />
        ))}
        {left.map((net) => (
          <LeftRow key={net.id} net={net} />
        ))}
      </ul>
    </section>
  );
}

function AnswerRow({ answer }: { answer: LineAnswer }) {
  const desk = traceDeskOf(useSession());
  const place = placeAnswered(answer);
  const said = answer.stray
    ? "Not a line: left out."
    : answer.joined
      ? "Joined here."
      : "Not joined here.";
  return (
    <li className={styles.row}>
      <button type="button" className={styles.about} data-next onClick={() => desk?.ask(place)}>
        <PlacePicture place={place} isSmall />
        <span className={styles.name}>{said}</span>
      </button>
      <TakeBack onTakeBack={() => desk?.takeBack(place.at)} />
    </li>
  );
}

function LeftRow({ net }: { net: WholeNet }) {
  const board = useBoard();
  const desk = traceDeskOf(useSession());
  return (
    <li className={styles.row}>
      <button
        type="button"
        className={styles.about}
        data-next
        onClick={() => showBox(board, net.box)}
      >
        <span className={styles.name}>Left as it is: {netWords(net)}</span>
      </button>
      <TakeBack onTakeBack={() => desk?.takeUp(net.id)} />
    </li>
  );
}

function TakeBack({ onTakeBack }: { onTakeBack: () => void }) {
  return (
    <span className={styles.acts}>
      <Button icon={<Undo2 aria-hidden />} onClick={onTakeBack}>
        Take back
      </Button>
    </span>
  );
}
