import { useId } from "react";

interface RadioOptionsProps<T extends string> {
  value: T;
  options: readonly { readonly value: T; readonly text: string }[];
  onChange: (value: T) => void;
}

/** The options of one choice, each a label with its button; how they look is for their fieldset to say. */
export function RadioOptions<T extends string>({ value, options, onChange }: RadioOptionsProps<T>) {
  const name = useId();
  return options.map((option) => (
    <label key={option.value} data-chosen={option.value === value}>
      <input
        type="radio"
        name={name}
        checked={option.value === value}
        onChange={() => onChange(option.value)}
      />
      {option.text}
    </label>
  ));
}
