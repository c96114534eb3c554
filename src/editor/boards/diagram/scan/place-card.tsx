import { X } from "lucide-react";
import { useEffect, useRef } from "react";
import type { Point } from "../../../../base/index.ts";
import { type DoubtfulPlace, panBy, traceDeskOf } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSession } from "../../../session-context.tsx";
import type { Board } from "../board.ts";
import { useBoard } from "../board-context.tsx";
import { PlacePicture } from "./place-picture.tsx";
import styles from "./scan-dock.module.css";
import { useTrace } from "./use-trace.ts";

/** A doubtful place looked at closely, to be answered; or an answer, to be taken back. */
export function PlaceCard() {
  const board = useBoard();
  const desk = traceDeskOf(useSession());
  const place = useTrace((state) => state.place);
  const card = useRef<HTMLElement>(null);
  const at = place?.at.join(" ");
  // To the card itself: no answer is chosen beforehand.
  // biome-ignore lint/correctness/useExhaustiveDependencies: for every other place anew
  useEffect(() => {
    card.current?.focus({ preventScroll: true });
    if (place) clear(board, place.at, card.current?.offsetHeight ?? 0);
  }, [at]);
  if (!desk || !place) return null;
  return (
    <section
      ref={card}
      className={styles.card}
      aria-label="Doubtful place"
      tabIndex={-1}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        desk.ask(null);
      }}
    >
      <div className={styles.place}>
        <PlacePicture place={place} />
        <p className={styles.say}>{placeWords(place)}</p>
        <div className={styles.answers}>
          {place.joined === null ? (
            <>
              <Button onClick={() => desk.answer(place.at, true)}>Joined</Button>
              <Button onClick={() => desk.answer(place.at, false)}>Not joined</Button>
            </>
          ) : (
            <Button onClick={() => desk.takeBack(place.at)}>Take back</Button>
          )}
        </div>
        <Button
          className={styles.away as string}
          tone="quiet"
          icon={<X aria-hidden />}
          aria-label="Decide later"
          onClick={() => desk.ask(null)}
        />
      </div>
    </section>
  );
}

/** Pixels of the view that a place keeps to every edge. */
const EDGE = 48;

/** Moves the sheet so that a place is in sight above the card, where it is not. */
function clear(board: Board, at: Point, cardHeight: number): void {
  const { width, height } = board.get().size;
  const free = height - cardHeight;
  const [x, y] = board.toView(at);
  const isClear = x >= EDGE && x <= width - EDGE && y >= EDGE && y <= free - EDGE;
  if (!isClear && width > 0) board.look(panBy(board.camera(), [width / 2 - x, free / 2 - y]));
}

function placeWords({ question, joined }: DoubtfulPlace): string {
  if (joined !== null)
    return joined
      ? "You said that the lines are joined here."
      : "You said that the lines are not joined here.";
  const asks =
    question?.kind === "gap"
      ? "Does the line go on over the gap here?"
      : "Are the lines joined here, or do they only cross?";
  const looks = question?.isLikelier === "joined" ? "joined" : "not joined";
  return `${asks} The print looks more like ${looks}. Until you say, they are not joined.`;
}
