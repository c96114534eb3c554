import { Check } from "lucide-react";
import type { SeenColour } from "../../../scan/index.ts";
import { type ColourCode, IEC_60757 } from "../../../standards/index.ts";
import { Button } from "../../app/controls/index.ts";
import { ColourPicker } from "./colour-picker.tsx";
import { ColourSwatch } from "./colour-swatch.tsx";
import styles from "./photo-colour.module.css";

interface PhotoColourChoiceProps {
  label: string;
  /** What the photo shows; null: no stripe. */
  seen: SeenColour | null;
  /** Offered before what is seen. */
  first?: ColourCode | null;
  /** `undefined`: nothing chosen yet; null: none. */
  value: ColourCode | null | undefined;
  /** Where it stands that there is none: first where that is likelier; null: there must be one. */
  none: "first" | "last" | null;
  /** A colour that makes no sense here. */
  except: ColourCode | null;
  onPick: (code: ColourCode | null) => void;
}

/** What one colour of the wire may be, nearest first, and every other code behind one more button. */
export function PhotoColourChoice(props: PhotoColourChoiceProps) {
  const { label, seen, value, except, onPick } = props;
  const near = seen?.ranked.slice(0, Math.max(3, seen.likely)) ?? [];
  const offered: readonly ColourCode[] = [
    ...(props.first ? [props.first] : []),
    ...near.map(({ code }) => code),
  ].filter((code) => code !== except);
  const isOther = value !== undefined && value !== null && !offered.includes(value);
  const none = (
    <Button aria-pressed={value === null} onClick={() => onPick(null)}>
      {value === null && <Check aria-hidden />}
      none
    </Button>
  );
  return (
    <fieldset className={styles.choice}>
      <legend>
        {label}
        {seen && (
          <span className={styles.seen}>
            looks like{" "}
            <span className={styles.look} style={{ background: seen.rgb }} aria-hidden="true" />
          </span>
        )}
      </legend>
      {props.none === "first" && none}
      {offered.map((code) => (
        <Button
          key={code}
          icon={<ColourSwatch colour={{ base: code }} />}
          aria-pressed={value === code}
          onClick={() => onPick(code)}
        >
          {value === code && <Check aria-hidden />}
          {code} {IEC_60757[code].name}
        </Button>
      ))}
      {props.none === "last" && none}
      <ColourPicker
        label={`Another ${label.toLowerCase()}`}
        value={isOther ? value : null}
        none="another"
        {...(except ? { except } : {})}
        onPick={(code) => code && onPick(code)}
      />
    </fieldset>
  );
}
