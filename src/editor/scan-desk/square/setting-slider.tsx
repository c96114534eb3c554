import { useId } from "react";
import styles from "./square-panel.module.css";

interface SettingSliderProps {
  label: string;
  value: number;
  least: number;
  most: number;
  step: number;
  /** The value as it is read: "12 px". */
  text: string;
  disabled?: boolean;
  onChange: (value: number) => void;
}

/** A number set by thumb or arrow keys, said beside it. */
export function SettingSlider({
  label,
  value,
  least,
  most,
  step,
  text,
  disabled = false,
  onChange,
}: SettingSliderProps) {
  const id = useId();
  return (
    <div className={styles.slider}>
      <label htmlFor={id}>{label}</label>
      <output htmlFor={id}>{text}</output>
      <input
        id={id}
        type="range"
        min={least}
        max={most}
        step={step}
        value={value}
        disabled={disabled}
        aria-valuetext={text}
        onChange={(event) => onChange(event.target.valueAsNumber)}
      />
    </div>
  );
}
