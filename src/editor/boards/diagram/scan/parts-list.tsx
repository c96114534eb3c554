import { type KeyboardEvent, useEffect, useRef } from "react";
import { kindOf } from "../../../../circuit/index.ts";
import type { PartItem, PartsDesk } from "../../../../session/index.ts";
import { PartSymbol } from "../part-symbol.tsx";
import styles from "./parts.module.css";

interface PartsListProps {
  desk: PartsDesk;
  items: readonly PartItem[];
  chosen: string | null;
}

/** Every proposal as a button: Tab goes through them, Enter places, Delete leaves. */
export function PartsList({ desk, items, chosen }: PartsListProps) {
  const list = useRef<HTMLUListElement>(null);
  /** The keys are on the list: they stay there when the one in hand goes. */
  const wasHere = useRef(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the list is another after each one
  useEffect(() => {
    const button = list.current?.querySelector<HTMLElement>('[aria-current="true"]');
    button?.scrollIntoView({ block: "nearest", inline: "nearest" });
    if (wasHere.current) button?.focus({ preventScroll: true });
  }, [chosen, items]);

  const onKeyDown = (event: KeyboardEvent, { id }: PartItem) => {
    if (event.key !== "Enter" && event.key !== "Delete" && event.key !== "Backspace") return;
    event.preventDefault();
    event.stopPropagation();
    wasHere.current = true;
    if (event.key === "Enter") desk.place(id);
    else desk.leave(id);
  };
  return (
    <ul
      ref={list}
      className={styles.list}
      aria-label="Found"
      tabIndex={-1}
      data-next
      onFocus={() => {
        wasHere.current = true;
      }}
      onBlur={(event) => {
        // Focus that goes nowhere has lost its button, and is given to the next.
        if (event.relatedTarget !== null) wasHere.current = false;
      }}
    >
      {items.map((item) => (
        <li key={item.id}>
          <button
            type="button"
            className={styles.one}
            data-sureness={item.sureness}
            aria-current={item.id === chosen}
            onFocus={() => desk.choose(item.id)}
            onClick={() => desk.choose(item.id)}
            onKeyDown={(event) => onKeyDown(event, item)}
          >
            <PartSymbol kind={item.kind} size={26} />
            <span>{kindOf(item.kind).title}</span>
            <span className={styles.sureness}>{item.sureness}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
