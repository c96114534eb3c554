import { useEffect, useRef } from "react";
import { isSure, type WordDesk, type WordItem } from "../../../../session/index.ts";
import styles from "./words.module.css";

interface WordsListProps {
  desk: WordDesk;
  items: readonly WordItem[];
  current: WordItem | null;
  /** After one was chosen. */
  onChoose?: () => void;
}

/** In the order of the queue, each with what it is called. */
const GROUPS: readonly (readonly [string, (item: WordItem) => boolean])[] = [
  ["Sure", isSure],
  ["Doubtful", (item) => item.state === "open" && !isSure(item)],
  ["Skipped", ({ state }) => state === "skipped"],
  ["Nothing to write", ({ state }) => state === "nowhere"],
  ["Written", ({ state }) => state === "written"],
];

/** All words of the sheet, those too that nothing drawn could be named by. */
export function WordsList({ desk, items, current, onChoose }: WordsListProps) {
  const list = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: for every other word in hand
  useEffect(() => {
    const row = list.current?.querySelector('[aria-current="true"]');
    row?.scrollIntoView({ block: "nearest" });
  }, [current?.id]);
  return (
    <div ref={list} className={styles.list}>
      {GROUPS.map(([title, belongs]) => {
        const members = items.filter(belongs);
        if (members.length === 0) return null;
        return (
          <section key={title} aria-label={title}>
            <h3 className={styles.title}>
              {title} ({members.length})
            </h3>
            <ul className={styles.rows}>
              {members.map((item) => (
                <li key={item.id}>
                  <button
                    type="button"
                    className={styles.row}
                    aria-current={item.id === current?.id}
                    onClick={() => {
                      desk.go(item.id);
                      onChoose?.();
                    }}
                  >
                    <span className={styles.read}>{item.text}</span>
                    <span className={styles.goes}>{item.targets[0]?.says ?? ""}</span>
                  </button>
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </div>
  );
}
