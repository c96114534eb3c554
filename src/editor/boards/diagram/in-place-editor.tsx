import { useEffect, useLayoutEffect, useRef, useState } from "react";
import type { Point } from "../../../base/index.ts";
import { drawnOf } from "../../../session/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import type { Board } from "./board.ts";
import { useBoard, useBoardState } from "./board-context.tsx";
import styles from "./in-place-editor.module.css";
import { wordsOf, writeWords } from "./words.ts";

/** Where the words of a thing stand, pixels of the view; null while it is on no sheet shown. */
function placeOf(board: Board, ref: string): Point | null {
  const scene = board.scene();
  const spot = scene?.pins.get(ref);
  if (spot) return board.toView(spot.at);
  const box = (scene?.partById.get(ref) ?? scene?.wireById.get(ref))?.box;
  return box ? board.toView([(box.left + box.right) / 2, box.top]) : null;
}

/** Words edited where they stand. */
export function InPlaceEditor() {
  const ref = useBoardState((state) => state.editing);
  return ref === null ? null : <Editor key={ref} target={ref} />;
}

let visits = 0;
const nextVisit = () => {
  visits += 1;
  return visits;
};

const WIDTH = 300;
const HEIGHT = 150;

function Editor({ target }: { target: string }) {
  const board = useBoard();
  const session = useSession();
  const form = useRef<HTMLFormElement>(null);
  const job = useSelected(drawnOf);
  // It moves along when the sheet is panned under it.
  useBoardState((state) => state.cameras);
  const size = useBoardState((state) => state.size);
  const words = wordsOf(job, target);
  const [first, setFirst] = useState(words?.first.value ?? "");
  const [second, setSecond] = useState(words?.second.value ?? "");
  const [wrong, setWrong] = useState<string | null>(null);
  const done = useRef(false);
  /** The words as they were, and the name of the one edit that all typing here is. */
  const visit = useRef({ before: words?.second.value ?? "", mergeKey: `words ${nextVisit()}` });
  useLayoutEffect(() => {
    const field = form.current?.querySelectorAll("input")[target.includes(":") ? 1 : 0];
    field?.focus();
    field?.select();
  }, [target]);
  useEffect(() => {
    if (!words) board.show({ editing: null });
  }, [board, words]);
  const place = placeOf(board, target);
  if (!words || !place) return null;

  const close = (next: string | null) => {
    done.current = true;
    board.show({ editing: next });
    if (next === null) {
      document
        .querySelector<HTMLElement>('[role="application"][aria-label="Diagram board"]')
        ?.focus();
    }
  };
  const keep = (next: string | null) => {
    if (done.current) return;
    const problem = writeWords(session, target, first.trim(), second.trim(), visit.current);
    if (problem) {
      setWrong(problem);
      return;
    }
    if (next !== null) session.show({ selection: [next] });
    close(next);
  };
  // A label or printed word is kept as it is typed; a mark or a colour must be whole to be one.
  const writeSecond = (text: string) => {
    if (words.secondIsFree) {
      writeWords(session, target, words.first.value, text.trim(), visit.current);
    }
  };
  const left = Math.max(8, Math.min(size.width - WIDTH - 8, place[0] - WIDTH / 2));
  const above = place[1] - HEIGHT - 12;
  const top = Math.max(8, Math.min(size.height - HEIGHT - 8, above < 8 ? place[1] + 16 : above));
  return (
    <form
      ref={form}
      className={styles.editor}
      style={{ left, top, width: Math.min(WIDTH, size.width - 16) }}
      aria-label={words.title}
      onSubmit={(event) => {
        event.preventDefault();
        keep(words.next);
      }}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        writeSecond(visit.current.before);
        close(null);
      }}
      onBlur={(event) => {
        if (event.currentTarget.contains(event.relatedTarget)) return;
        keep(null);
      }}
    >
      <label>
        <span>{words.first.label}</span>
        <input
          value={first}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => setFirst(event.target.value)}
        />
      </label>
      <label>
        <span>{words.second.label}</span>
        <input
          value={second}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => {
            setSecond(event.target.value);
            writeSecond(event.target.value);
          }}
        />
      </label>
      {wrong && (
        <p className={styles.wrong} role="alert">
          {wrong}
        </p>
      )}
      <button type="submit" className="visually-hidden">
        Keep
      </button>
    </form>
  );
}
