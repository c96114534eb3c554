import { formatColour } from "../../standards/index.ts";
import { setWords } from "../diagram/set-words.ts";
import type { CorrectionEdit, CorrectionOf } from "./correction-edit.ts";

export const takeColour: CorrectionEdit<CorrectionOf<"take-colour">> = {
  label: ({ wire, colour }) =>
    `Take the machine’s colour ${formatColour(colour)} into the diagram (${wire})`,
  change: (draft, { wire, colour }) => setWords(draft, wire, { colour: { ...colour } }),
};

export const takeNumber: CorrectionEdit<CorrectionOf<"take-number">> = {
  label: ({ wire, number }) => `Take the machine’s number ${number} into the diagram (${wire})`,
  change: (draft, { wire, number }) => setWords(draft, wire, { number }),
};
