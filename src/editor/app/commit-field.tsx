import { type ComponentPropsWithRef, useEffect, useId, useRef, useState } from "react";
import type { EditOptions } from "../../job/index.ts";

interface CommitFieldProps extends Omit<ComponentPropsWithRef<"input">, "value" | "onChange"> {
  value: string;
  /**
   * Called once the user leaves the field or presses Enter, only when the text changed; of a
   * `live` field at every key. `merge` makes all edits of one visit one undo step.
   */
  onCommit: (text: string, merge: EditOptions) => void;
  /** Called once the field is left with the text that the document has: nothing is wrong with that. */
  onUnchanged?: () => void;
  /** Whether nothing at all is an answer. */
  mayBeEmpty?: boolean;
  /** Keeps every key as it is typed: for words, of which each beginning is one too. */
  live?: boolean;
}

/** The time from entering a field to leaving it. */
interface Visit {
  readonly merge: EditOptions;
  readonly before: string;
  /** What the document has by now of what was typed. */
  sent: string;
}

let visits = 0;

/** A field whose typing is one edit: Enter or leaving ends it, Escape puts the old text back. */
export function CommitField({
  value,
  onCommit,
  onUnchanged,
  mayBeEmpty = false,
  live = false,
  ...rest
}: CommitFieldProps) {
  const [text, setText] = useState(value);
  const visit = useRef<Visit | null>(null);
  const cancelled = useRef(false);
  useEffect(() => {
    if (visit.current?.sent === value) return;
    // Undone or changed elsewhere in the middle of typing: what the document says stands.
    visit.current = null;
    setText(value);
  }, [value]);

  const begun = () => {
    visits += 1;
    visit.current ??= { merge: { mergeKey: `typing ${visits}` }, before: value, sent: value };
    return visit.current;
  };
  const send = (next: string) => {
    const now = begun();
    if (next === now.sent || (next === "" && !mayBeEmpty)) return;
    // First: the document may answer before the call is over.
    now.sent = next;
    onCommit(next, now.merge);
  };
  const leave = () => {
    const now = begun();
    if (cancelled.current) {
      if (live && now.sent !== now.before) onCommit(now.before, now.merge);
      setText(live ? now.before : value);
      onUnchanged?.();
    } else {
      const tidy = text.trim();
      if (tidy === now.sent || (tidy === "" && !mayBeEmpty)) {
        setText(value);
        onUnchanged?.();
      } else send(tidy);
    }
    cancelled.current = false;
    visit.current = null;
  };
  return (
    <input
      {...rest}
      data-own-escape
      value={text}
      onChange={(event) => {
        setText(event.target.value);
        if (live) send(event.target.value.trim());
      }}
      onFocus={(event) => rest.autoFocus && event.currentTarget.select()}
      onBlur={leave}
      onKeyDown={(event) => {
        if (event.key === "Escape") {
          cancelled.current = true;
          event.stopPropagation();
          event.currentTarget.blur();
        }
        if (event.key === "Enter") event.currentTarget.blur();
      }}
    />
  );
}

/** The same with its name above it. */
export function LabelledField({ label, className, ...rest }: CommitFieldProps & { label: string }) {
  const id = useId();
  return (
    <div className={className}>
      <label htmlFor={id}>{label}</label>
      <CommitField id={id} {...rest} />
    </div>
  );
}
