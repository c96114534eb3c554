import { useState } from "react";
import type { PinId } from "../../../../job/index.ts";
import { Choice } from "../../plug/fields.tsx";
import styles from "./details.module.css";

interface PinPairProps {
  pins: readonly { readonly id: PinId; readonly printed?: string | undefined }[];
  between: readonly [PinId, PinId];
  labels: readonly [string, string];
  onChange: (between: [PinId, PinId]) => void;
}

export const pinText = ({ id, printed }: PinPairProps["pins"][number]): string =>
  [id, printed].filter(Boolean).join(" · ");

/** Two pins of one part, which may not be the same one. */
export function PinPair({ pins, between, labels, onChange }: PinPairProps) {
  const [wrong, setWrong] = useState(false);
  const options = pins.map((pin) => ({ value: pin.id, text: pinText(pin) }));
  const put = (end: 0 | 1, pin: PinId) => {
    const same = between[end === 0 ? 1 : 0] === pin;
    setWrong(same);
    if (!same) onChange(end === 0 ? [pin, between[1]] : [between[0], pin]);
  };
  return (
    <>
      {([0, 1] as const).map((end) => (
        <Choice
          key={end}
          label={labels[end]}
          value={between[end]}
          options={options}
          onChange={(pin) => put(end, pin)}
        />
      ))}
      {wrong && (
        <p className={styles.pairWrong} role="alert">
          It takes two pins: choose another one than {between.join(" and ")}.
        </p>
      )}
    </>
  );
}
