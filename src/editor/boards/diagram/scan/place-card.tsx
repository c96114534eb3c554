import { Eraser, X } from "lucide-react";
import { useEffect, useRef } from "react";
import type { Point } from "../../../../base/index.ts";
import {
  type DoubtfulPlace,
  isOnePlace,
  panBy,
  type TraceDesk,
  traceDeskOf,
} from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { focusDiagram, isFocusLost } from "../../../lost-focus.ts";
import { useSession } from "../../../session-context.tsx";
import type { Board } from "../board.ts";
import { useBoard, useBoardState } from "../board-context.tsx";
import { PlacePicture } from "./place-picture.tsx";
import styles from "./scan-dock.module.css";
import { useTrace } from "./use-trace.ts";

/** A doubtful place looked at closely, to be answered; or an answer, to be taken back. */
export function PlaceCard() {
  const board = useBoard();
  const desk = traceDeskOf(useSession());
  const place = useTrace((state) => state.place);
  const card = useRef<HTMLElement>(null);
  /** What had the keys when it was opened; null while it is not. */
  const opener = useRef<Element | null>(null);
  const at = place?.at.join(" ");
  // To the card itself: no answer is chosen beforehand.
  // biome-ignore lint/correctness/useExhaustiveDependencies: for every other place anew
  useEffect(() => {
    if (place) {
      opener.current ??= document.activeElement;
      card.current?.focus({ preventScroll: true });
      return;
    }
    // The button that was pressed is gone with the card.
    if (opener.current && isFocusLost()) giveBack(opener.current);
    opener.current = null;
  }, [at]);
  const size = useBoardState((state) => state.size);
  // The board's room is another when a list has made way for the card.
  // biome-ignore lint/correctness/useExhaustiveDependencies: for every other place and room anew
  useEffect(() => {
    if (place) clear(board, place.at, card.current?.offsetHeight ?? 0);
  }, [at, size]);
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
          <Answers desk={desk} place={place} />
        </div>
        <Button
          className={styles.away as string}
          tone="quiet"
          icon={<X aria-hidden />}
          aria-label={place.question ? "Decide later" : "Leave it as it is"}
          onClick={() => desk.ask(null)}
        />
      </div>
    </section>
  );
}

/** Gives the keys back to what opened the card, e.g. a row of the list; to the board where that is gone. */
function giveBack(opener: Element): void {
  if (opener instanceof HTMLElement && opener.isConnected) opener.focus({ preventScroll: true });
  if (isFocusLost()) focusDiagram();
}

function Answers({ desk, place }: { desk: TraceDesk; place: DoubtfulPlace }) {
  const { at, stretch, joined } = place;
  /** The next of its kind, all round; null where it is the only one. */
  const after = (isKind: (one: DoubtfulPlace) => boolean) => {
    const all = desk.places().filter(isKind);
    const next = all[(all.findIndex((one) => isOnePlace(one.at, at)) + 1) % all.length];
    return all.length > 1 && next ? next : null;
  };
  if (stretch === "left-out" || joined !== null)
    return <Button onClick={() => desk.takeBack(at)}>Take back</Button>;
  if (stretch === null) {
    const next = after(({ question }) => question !== null);
    return (
      <>
        <Button onClick={() => desk.answer(at, true)}>Joined</Button>
        <Button onClick={() => desk.answer(at, false)}>Not joined</Button>
        {next && <Button onClick={() => desk.ask(next)}>Next place</Button>}
      </>
    );
  }
  const next = stretch === "ends" ? after((one) => one.stretch === "ends") : null;
  return (
    <>
      <Button icon={<Eraser aria-hidden />} onClick={() => desk.leaveOut(at)}>
        Not a line: leave it out
      </Button>
      {next && <Button onClick={() => desk.ask(next)}>Next open end</Button>}
    </>
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

function placeWords({ question, joined, stretch }: DoubtfulPlace): string {
  switch (stretch) {
    case "ends":
      return "The line ends here and nothing is placed. A part that is missing? Place it. A stain, a scratch? Leave the dashed stretch out.";
    case "here":
      return "Is the dashed stretch, from one joint or end to the next, a stain or a scratch?";
    case "left-out":
      return "You said that this is no line.";
  }
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
