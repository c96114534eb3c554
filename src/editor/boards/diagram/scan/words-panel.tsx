import { CheckCheck, CircleAlert, List, Square, X } from "lucide-react";
import { useRef } from "react";
import { isSure, type WordDesk } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useKeptFocus } from "./use-kept-focus.ts";
import { useWordDesk, useWords } from "./use-words.ts";
import styles from "./words.module.css";
import { WordInHand } from "./words-in-hand.tsx";
import { WordsList } from "./words-list.tsx";

/**
 * The queue of printed words, under the bar that opened it. Where the picture has no room beside it, the list of all
 * words takes the place of the one in hand until one is chosen in it.
 */
export function WordsPanel() {
  const desk = useWordDesk();
  return desk && <Panel desk={desk} />;
}

function Panel({ desk }: { desk: WordDesk }) {
  const { isOpen } = useWords(desk).state;
  return isOpen && <Queue desk={desk} />;
}

function Queue({ desk }: { desk: WordDesk }) {
  const { state, items, current } = useWords(desk);
  const panel = useRef<HTMLElement>(null);
  const keepFocus = useKeptFocus(panel);
  const { isListed } = state;
  const open = items.filter((item) => item.state === "open").length;
  const sure = items.filter(isSure).length;
  const isRead = state.reading === null && items.length > 0;
  return (
    <section
      ref={panel}
      className={styles.panel}
      data-listed={isRead && isListed}
      aria-label="Printed words"
      {...keepFocus}
    >
      <div className={styles.head}>
        <p className={styles.count} role="status">
          {said(state.reading, items.length, open, sure)}
        </p>
        {isRead && (
          <>
            {sure > 0 && (
              <Button
                icon={<CheckCheck aria-hidden />}
                aria-label={sure === 1 ? "Confirm the sure one" : `Confirm all ${sure} sure`}
                onClick={() => void desk.confirmSure()}
              >
                <span className={styles.wide}>{sure === 1 ? "Confirm the" : "Confirm all"}</span>
                {sure === 1 ? "sure one" : `${sure} sure`}
              </Button>
            )}
            <Button
              icon={<List aria-hidden />}
              aria-pressed={isListed}
              aria-label="List of all words"
              onClick={() => desk.list(!isListed)}
            />
          </>
        )}
        {state.reading !== null && (
          <Button icon={<Square aria-hidden />} onClick={desk.callOff}>
            Stop
          </Button>
        )}
        <Button
          tone="quiet"
          icon={<X aria-hidden />}
          aria-label="Put the words away"
          data-rest
          onClick={desk.close}
        />
      </div>
      {state.reading !== null && (
        <progress
          className={styles.share}
          max={100}
          value={Math.round(state.reading * 100)}
          aria-label="Reading words"
        />
      )}
      {state.problem !== null && (
        <p className={styles.problem} role="alert">
          <CircleAlert aria-hidden />
          {state.problem}
        </p>
      )}
      {isRead && (
        <div className={styles.body}>
          {current && <WordInHand key="in-hand" desk={desk} item={current} />}
          {isListed && (
            <WordsList
              desk={desk}
              items={items}
              current={current}
              onChoose={() => desk.list(false)}
            />
          )}
        </div>
      )}
    </section>
  );
}

function said(reading: number | null, all: number, open: number, sure: number): string {
  if (reading !== null) return `Reading words, ${Math.round(reading * 100)} %`;
  if (all === 0) return "No words were read.";
  if (open === 0) return "Every word that has a place is written.";
  if (sure === open) return `${open} to write`;
  const doubtful = sure > 0 ? open - sure : open === 1 ? "and it is" : "all of them";
  return `${open} to write, ${doubtful} doubtful`;
}
