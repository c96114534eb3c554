import { ArrowLeft, ArrowRight, Check, SkipForward, TriangleAlert } from "lucide-react";
import { type KeyboardEvent, useEffect, useId, useRef, useState } from "react";
import type { WordDesk, WordItem } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useBoard, useBoardState } from "../board-context.tsx";
import { bringIntoSight } from "./bring-into-sight.ts";
import { useTakenLook } from "./use-taken-look.ts";
import styles from "./words.module.css";
import { WordCrop } from "./words-crop.tsx";

interface WordInHandProps {
  desk: WordDesk;
  item: WordItem;
}

const now = () => performance.now();

const NOT_YET = "Not written yet: look first, then confirm.";

/** One printed word: its piece of the picture, how it was read, and what it will be written to. */
export function WordInHand({ desk, item }: WordInHandProps) {
  const board = useBoard();
  const [text, setText] = useState(item.text);
  const whole = useRef<HTMLDivElement>(null);
  const field = useRef<HTMLInputElement>(null);
  const doubtId = useId();
  const isTypedInto = matchMedia("(pointer: fine)").matches;
  const { id, box, turn } = item;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another item, or the same one corrected
  useEffect(() => setText(item.text), [id, item.text]);
  const size = useBoardState((state) => state.size);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another item or another room moves the view
  useEffect(() => {
    // Its letters are no taller where it is a single thin one.
    const tall = turn === 0 ? box.bottom - box.top : box.right - box.left;
    bringIntoSight(board, box, tall);
  }, [board, id, size]);
  useEffect(() => {
    // With a finger the screen's keyboard would jump up before anybody wants to type.
    if (isTypedInto) field.current?.focus();
  }, [isTypedInto]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each from its top
  useEffect(() => {
    whole.current?.parentElement?.scrollTo({ top: 0 });
  }, [id]);
  const [target] = item.targets;
  const look = useTakenLook(id, item.doubts.join(" "), now);

  /**
   * Writes what is shown, what is doubtful only after it was looked at. A correction that belongs elsewhere, or of
   * which something new is doubtful, is shown first.
   */
  const take = () => {
    if (text.trim() !== item.text) {
      desk.correct(id, text);
      const next = desk.current();
      if (next?.id !== id || next.targets[0]?.ref !== target?.ref) return;
      if (next.doubts.some((doubt) => !item.doubts.includes(doubt))) return;
    } else if (item.doubts.length > 0 && !look.isTaken()) return;
    desk.confirm(id);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const { key } = event;
    if (key !== "Enter" && key !== "ArrowDown" && key !== "ArrowUp") return;
    event.preventDefault();
    // A key held down would write words that nobody looked at.
    if (key === "Enter") {
      if (!event.repeat) take();
    } else desk.step(key === "ArrowDown" ? 1 : -1);
  };

  const isWritten = item.state === "written";
  return (
    <div ref={whole} className={styles.item} tabIndex={-1} data-next={isTypedInto ? undefined : ""}>
      <WordCrop item={item} onShown={look.show} />
      <input
        ref={field}
        className={styles.input}
        aria-label="Reads"
        aria-describedby={item.doubts.length > 0 ? doubtId : undefined}
        data-next={isTypedInto ? "" : undefined}
        value={text}
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={onKeyDown}
      />
      <div className={styles.goal}>
        <Target desk={desk} item={item} />
        {item.doubts.length > 0 && (
          <div className={styles.doubt}>
            <TriangleAlert aria-hidden />
            <p>
              <span id={doubtId}>
                <strong>Doubtful.</strong> {item.doubts.join(" ")}
              </span>
              <span aria-live="polite">{look.isHasty && ` ${NOT_YET}`}</span>
            </p>
          </div>
        )}
      </div>
      <div className={styles.actions}>
        <Button
          icon={<ArrowLeft aria-hidden />}
          aria-label="Word before"
          onClick={() => desk.step(-1)}
        />
        <Button
          icon={<ArrowRight aria-hidden />}
          aria-label="Next word"
          onClick={() => desk.step(1)}
        />
        <Button icon={<SkipForward aria-hidden />} onClick={() => desk.skip(id)}>
          Skip
        </Button>
        <Button
          tone="primary"
          icon={<Check aria-hidden />}
          disabled={
            isWritten || (text.trim() === item.text && (!target || target.problem !== null))
          }
          onClick={take}
        >
          Confirm
        </Button>
      </div>
    </div>
  );
}

/** What the word will be written to; a choice where there are several. */
function Target({ desk, item }: WordInHandProps) {
  const { id, targets, state } = item;
  const [target, ...others] = targets;
  if (!target)
    return (
      <p className={styles.says}>
        {item.waits
          ? "Nothing to write yet: it stands at a joint of a line where no splice is drawn. Once one is, this can name it."
          : "Nothing to write: no name, wire or pin is drawn beside it that it would tell more of."}
      </p>
    );
  if (others.length === 0 || state === "written") {
    return (
      <p className={styles.says}>
        {state === "written" && "Written: "}
        {target.says}
      </p>
    );
  }
  return (
    <select
      className={styles.input}
      aria-label="Write to"
      value={target.key}
      onChange={(event) => desk.choose(id, event.target.value)}
    >
      {[...targets]
        .sort((a, b) => a.key.localeCompare(b.key))
        .map(({ key, says }) => (
          <option key={key} value={key}>
            {says}
          </option>
        ))}
    </select>
  );
}
