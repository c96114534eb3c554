import { type KeyboardEvent, useId, useLayoutEffect, useRef, useState } from "react";
import styles from "./choice-list.module.css";
import { useGrowingList } from "./use-growing-list.ts";

/** One of the things that can be chosen. */
export interface Choice {
  readonly id: string;
  readonly text: string;
  /** A second line. */
  readonly under?: string;
  /** Heading over it and those of the same group behind it; not shown while something is sought. */
  readonly group?: string;
  /** What it is called besides; whoever types just this finds it first. */
  readonly name?: string;
  readonly chosen?: boolean;
  readonly disabled?: boolean;
}

interface ChoiceListProps {
  choices: readonly Choice[];
  /** Name of the list, e.g. `Cavities`. */
  name: string;
  /** Name of the field that narrows it. */
  search: string;
  placeholder: string;
  /** What stands there when nothing of the name sought is found. */
  none: string;
  onChoose: (id: string) => void;
}

/**
 * Things to choose from, narrowed by what is typed; arrows and Enter choose. Before a key was pressed
 * Enter chooses nothing: the first of a list is no answer.
 */
export function ChoiceList({
  choices,
  name,
  search,
  placeholder,
  none,
  onChoose,
}: ChoiceListProps) {
  const [sought, setSought] = useState("");
  const [moved, setMoved] = useState<number | null>(null);
  const listId = useId();
  const list = useRef<HTMLDivElement>(null);
  const wanted = sought.trim().toLowerCase();
  const found = wanted === "" ? choices : narrowed(choices, wanted);
  const at = moved ?? (wanted === "" ? found.findIndex((one) => one.chosen) : found.length && 0);
  const marked = found[at];
  const { shown, isMore, end } = useGrowingList(found, at + 2);

  // biome-ignore lint/correctness/useExhaustiveDependencies: they say when, and are not read
  useLayoutEffect(() => {
    const frame = list.current;
    const item = frame?.querySelector<HTMLElement>("[data-marked=true]");
    if (!frame) return;
    if (!item) frame.scrollTop = 0;
    else if (item.offsetTop < frame.scrollTop) frame.scrollTop = item.offsetTop;
    else if (item.offsetTop + item.offsetHeight > frame.scrollTop + frame.clientHeight)
      frame.scrollTop = item.offsetTop + item.offsetHeight - frame.clientHeight;
  }, [at, wanted]);

  const choose = (one: Choice) => {
    if (!one.disabled) onChoose(one.id);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "ArrowDown") setMoved(Math.min(found.length - 1, at + 1));
    else if (event.key === "ArrowUp") setMoved(Math.max(0, at - 1));
    // The same press must not go on to the form that the list was opened in.
    else if (event.key === "Enter" && marked) choose(marked);
    else return;
    event.preventDefault();
  };

  return (
    <div className={styles.list}>
      <input
        type="search"
        role="combobox"
        aria-label={search}
        aria-expanded
        aria-controls={listId}
        aria-activedescendant={marked ? `${listId}-${at}` : undefined}
        autoComplete="off"
        placeholder={placeholder}
        value={sought}
        onChange={(event) => {
          setSought(event.target.value);
          setMoved(null);
        }}
        onKeyDown={onKeyDown}
      />
      <div ref={list} className={styles.found} id={listId} role="listbox" aria-label={name}>
        {shown.map((one, place) => (
          <div key={one.id} role="presentation">
            {wanted === "" && one.group && one.group !== shown[place - 1]?.group && (
              <div className={styles.group} role="presentation">
                {one.group}
              </div>
            )}
            <button
              id={`${listId}-${place}`}
              type="button"
              role="option"
              tabIndex={-1}
              aria-selected={one.chosen ?? false}
              data-marked={place === at}
              disabled={one.disabled}
              onClick={() => choose(one)}
            >
              <span>{one.text}</span>
              {one.under && <span className={styles.under}>{one.under}</span>}
            </button>
          </div>
        ))}
        {isMore && <div ref={end} className={styles.end} aria-hidden />}
      </div>
      <p className={styles.none} role="status">
        {found.length === 0 ? none : ""}
      </p>
    </div>
  );
}

/** Those that hold what is sought: the very one first, then those that begin with it. */
function narrowed(choices: readonly Choice[], wanted: string): readonly Choice[] {
  const ranks: Choice[][] = [[], [], []];
  for (const one of choices) {
    const names = [one.name ?? one.id, one.id, one.text].map((name) => name.toLowerCase());
    if (names.includes(wanted)) ranks[0]?.push(one);
    else if (names.some((name) => name.startsWith(wanted))) ranks[1]?.push(one);
    else if (names.some((name) => name.includes(wanted))) ranks[2]?.push(one);
  }
  return ranks.flat();
}
