import { Delete } from "lucide-react";
import type { ReadingQuantity } from "../../job/index.ts";
import { pressKey } from "../../session/index.ts";
import styles from "./keypad.module.css";

const NAMES: Readonly<Record<string, string>> = {
  back: "Take the last one back",
  "−": "Minus",
  ".": "Point",
  OL: "OL, over the limit",
  k: "Thousands",
  m: "Thousandths",
};

interface KeypadProps {
  quantity: ReadingQuantity;
  value: string;
  onChange: (value: string) => void;
}

/** Keys for a gloved thumb. The last column is what the quantity needs: OL and k are for ohms. */
export function Keypad({ quantity, value, onChange }: KeypadProps) {
  const special = quantity === "ohms" ? ["OL", "k"] : ["−", "m"];
  const keys = [
    ...["7", "8", "9", "back"],
    ...["4", "5", "6", special[0] ?? ""],
    ...["1", "2", "3", special[1] ?? ""],
    ...["0", "."],
  ];
  return (
    <fieldset className={styles.keypad} aria-label="Keypad">
      {keys.map((key) => (
        <button
          key={key}
          type="button"
          data-key={key}
          aria-label={NAMES[key]}
          onClick={() => onChange(pressKey(value, key))}
        >
          {key === "back" ? <Delete aria-hidden /> : key}
        </button>
      ))}
    </fieldset>
  );
}
