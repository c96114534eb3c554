import { type ComponentPropsWithRef, useEffect, useId, useRef, useState } from "react";

interface CommitFieldProps extends Omit<ComponentPropsWithRef<"input">, "value" | "onChange"> {
  value: string;
  /** Called once the user leaves the field or presses Enter, only when the text changed. */
  onCommit: (text: string) => void;
  /** Whether nothing at all is an answer. */
  mayBeEmpty?: boolean;
}

/** A field whose typing is one edit: Enter or leaving commits, Escape puts the old text back. */
export function CommitField({ value, onCommit, mayBeEmpty = false, ...rest }: CommitFieldProps) {
  const [text, setText] = useState(value);
  const cancelled = useRef(false);
  useEffect(() => setText(value), [value]);
  const commit = () => {
    const tidy = text.trim();
    if (cancelled.current || tidy === value || (tidy === "" && !mayBeEmpty)) setText(value);
    else onCommit(tidy);
    cancelled.current = false;
  };
  return (
    <input
      {...rest}
      data-own-escape
      value={text}
      onChange={(event) => setText(event.target.value)}
      onFocus={(event) => rest.autoFocus && event.currentTarget.select()}
      onBlur={commit}
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
