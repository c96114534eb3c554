import { Minus, Plus } from "lucide-react";
import { useId } from "react";
import { Button } from "../../app/controls/index.ts";
import styles from "./count-stepper.module.css";

interface CountStepperProps {
  label: string;
  value: number;
  most: number;
  onChange: (value: number) => void;
}

/** A whole number from 1 up, typed or stepped through with a thumb. */
export function CountStepper({ label, value, most, onChange }: CountStepperProps) {
  const id = useId();
  const change = (next: number) => {
    if (next >= 1 && next <= most) onChange(next);
  };
  return (
    <div className={styles.stepper}>
      <label htmlFor={id}>{label}</label>
      <Button
        icon={<Minus aria-hidden />}
        aria-label={`${label}: one fewer`}
        disabled={value <= 1}
        onClick={() => change(value - 1)}
      />
      <input
        id={id}
        inputMode="numeric"
        value={value}
        onFocus={(event) => event.target.select()}
        onChange={(event) => change(Number.parseInt(event.target.value, 10))}
      />
      <Button
        icon={<Plus aria-hidden />}
        aria-label={`${label}: one more`}
        disabled={value >= most}
        onClick={() => change(value + 1)}
      />
    </div>
  );
}
