import { ChevronDown } from "lucide-react";
import { COLOUR_CODES, type ColourCode, IEC_60757 } from "../../../standards/index.ts";
import { Button, Menu, MenuItem } from "../../app/controls/index.ts";
import { ColourSwatch } from "./colour-swatch.tsx";

interface ColourPickerProps {
  label: string;
  value: ColourCode | null;
  /** What it says while nothing is chosen. */
  none: string;
  /** A colour that makes no sense here: the base, for a tracer. */
  except?: ColourCode;
  onPick: (code: ColourCode | null) => void;
}

/** The letter codes of IEC 60757 with a swatch and the word for each. */
export function ColourPicker({ label, value, none, except, onPick }: ColourPickerProps) {
  return (
    <Menu
      button={
        <Button
          aria-label={`${label}: ${value ? `${value} ${IEC_60757[value].name}` : none}`}
          icon={<ColourSwatch colour={value ? { base: value } : null} />}
        >
          {value ?? none}
          <ChevronDown aria-hidden />
        </Button>
      }
    >
      <MenuItem icon={<ColourSwatch colour={null} />} onChoose={() => onPick(null)}>
        {none}
      </MenuItem>
      {COLOUR_CODES.filter((code) => code !== except).map((code) => (
        <MenuItem
          key={code}
          icon={<ColourSwatch colour={{ base: code }} />}
          onChoose={() => onPick(code)}
        >
          {IEC_60757[code].name}, {code}
        </MenuItem>
      ))}
    </Menu>
  );
}
