import type { WordDesk } from "../../../../session/index.ts";
import { useSelected } from "../../../session-context.tsx";
import { useWordDesk, useWords } from "./use-words.ts";
import styles from "./words.module.css";
import { WordsList } from "./words-list.tsx";

/** The list of all words beside the picture, where there is room for it. */
export function WordsSide() {
  const desk = useWordDesk();
  const shown = useSelected((state) => state.scanDesk && !state.operate.on);
  return desk && shown && <Listed desk={desk} />;
}

function Listed({ desk }: { desk: WordDesk }) {
  const { state, items, current } = useWords(desk);
  if (!state.isOpen || !state.isListed || items.length === 0) return null;
  return (
    <section className={styles.side} aria-label="All words">
      <WordsList desk={desk} items={items} current={current} />
    </section>
  );
}
