import { type ReactNode, useId } from "react";
import type { EditOptions } from "../../../job/index.ts";
import { CommitField } from "../../app/commit-field.tsx";
import { RadioOptions } from "../../app/controls/index.ts";
import styles from "./fields.module.css";

interface TextFieldProps {
  label: string;
  value: string;
  onChange: (text: string) => void;
  /** Shown after the field, e.g. `mm`. */
  unit?: string;
  hint?: string;
  numeric?: boolean;
  wide?: boolean;
}

export function TextField({
  label,
  value,
  onChange,
  unit,
  hint,
  numeric = false,
  wide = false,
}: TextFieldProps) {
  const id = useId();
  return (
    <div className={styles.field} data-wide={wide}>
      <label htmlFor={id}>{label}</label>
      <span className={styles.row}>
        <input
          id={id}
          value={value}
          inputMode={numeric ? "decimal" : undefined}
          aria-describedby={hint ? `${id}hint` : undefined}
          onChange={(event) => onChange(event.target.value)}
        />
        {unit && <span className={styles.unit}>{unit}</span>}
      </span>
      {hint && (
        <span id={`${id}hint`} className={styles.hint}>
          {hint}
        </span>
      )}
    </div>
  );
}

interface EditFieldProps {
  label: string;
  value: string;
  unit?: string;
  placeholder?: string;
  /** What is wrong with what was typed last. */
  problem?: string | null;
  /** Keeps every key as it is typed. */
  live?: boolean;
  onCommit: (text: string, merge: EditOptions) => void;
  /** Called once the field is left with the value that it had: the problem is gone. */
  onUnchanged?: () => void;
}

/** A field of the job itself: leaving it is one edit, and nothing at all is an answer. */
export function EditField({
  label,
  value,
  unit,
  placeholder,
  problem = null,
  live = false,
  onCommit,
  onUnchanged,
}: EditFieldProps) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <span className={styles.row}>
        <CommitField
          id={id}
          value={value}
          placeholder={placeholder}
          mayBeEmpty
          live={live}
          inputMode={unit ? "decimal" : undefined}
          aria-invalid={problem !== null}
          aria-describedby={problem === null ? undefined : `${id}problem`}
          onCommit={onCommit}
          onUnchanged={onUnchanged}
        />
        {unit && <span className={styles.unit}>{unit}</span>}
      </span>
      {problem !== null && (
        <p id={`${id}problem`} className={styles.problem} role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

export interface ChoiceOption<T extends string> {
  readonly value: T;
  readonly text: string;
}

interface ChoiceProps<T extends string> {
  label: string;
  value: T;
  options: readonly ChoiceOption<T>[];
  onChange: (value: T) => void;
}

export function Choice<T extends string>({ label, value, options, onChange }: ChoiceProps<T>) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        onChange={(event) => {
          const option = options.find((one) => one.value === event.target.value);
          if (option) onChange(option.value);
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
    </div>
  );
}

/** A choice whose options all show: few of them, and the first thing decided. */
export function Choices<T extends string>({ label, value, options, onChange }: ChoiceProps<T>) {
  return (
    <fieldset className={styles.choices}>
      <legend>{label}</legend>
      <RadioOptions value={value} options={options} onChange={onChange} />
    </fieldset>
  );
}

export function Tick({
  label,
  value,
  onChange,
}: {
  label: string;
  value: boolean;
  onChange: (value: boolean) => void;
}) {
  return (
    <label className={styles.tick}>
      <input type="checkbox" checked={value} onChange={(event) => onChange(event.target.checked)} />
      {label}
    </label>
  );
}

export const FieldGroup = ({ title, children }: { title: string; children: ReactNode }) => (
  <section className={styles.group}>
    <h3>{title}</h3>
    <div className={styles.grid}>{children}</div>
  </section>
);
