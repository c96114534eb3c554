import { useId } from "react";

interface PartSearchProps {
  label: string;
  words: string;
  onWords: (words: string) => void;
}

/** A field that looks for a part by its name; it is part of a form and keeps nothing. */
export function PartSearch({ label, words, onWords }: PartSearchProps) {
  const id = useId();
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="search"
        autoComplete="off"
        value={words}
        onChange={(event) => onWords(event.target.value)}
        onKeyDown={(event) => event.key === "Enter" && event.preventDefault()}
      />
    </>
  );
}
