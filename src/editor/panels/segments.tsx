import { RadioOptions } from "../app/controls/index.ts";
import styles from "./segments.module.css";

interface SegmentsProps<T extends string> {
  label: string;
  value: T;
  options: readonly { readonly value: T; readonly text: string }[];
  /** The option that counts as untouched: any other one is marked as changed. */
  rest?: T;
  /** The options say by themselves what they are about: the label is only read out. */
  bare?: boolean;
  onChange: (value: T) => void;
}

/** One of a few, all in sight, each as large as a thumb. */
export function Segments<T extends string>({
  label,
  value,
  options,
  rest,
  bare = false,
  onChange,
}: SegmentsProps<T>) {
  return (
    <fieldset className={styles.segments} data-changed={rest !== undefined && value !== rest}>
      <legend data-unseen={bare}>{label}</legend>
      <div className={styles.row}>
        <RadioOptions value={value} options={options} onChange={onChange} />
      </div>
    </fieldset>
  );
}
