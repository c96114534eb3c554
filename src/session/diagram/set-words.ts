import { type Colour, type Job, splitRef } from "../../job/index.ts";
import { draftPart, draftWire } from "./draft.ts";

/** Words to write; an empty text or null takes the word away. */
export interface WordChange {
  readonly label?: string;
  readonly printed?: string;
  readonly number?: string;
  readonly colour?: Colour | null;
}

const put = <T extends object, K extends keyof T>(thing: T, key: K, value: T[K] | "" | null) => {
  if (value === "" || value === null) delete thing[key];
  else if (value !== undefined && thing[key] !== value) thing[key] = value as T[K];
};

/** Writes the words of a part, a wire, or a pin of a module. */
export function setWords(draft: Job, ref: string, change: WordChange): void {
  const part = draftPart(draft, ref);
  if (part) {
    if (change.label !== undefined) put(part, "label", change.label);
    return;
  }
  const wire = draftWire(draft, ref);
  if (wire) {
    if (change.number !== undefined) put(wire, "number", change.number);
    const same =
      wire.colour?.base === change.colour?.base && wire.colour?.tracer === change.colour?.tracer;
    if (change.colour !== undefined && !same) put(wire, "colour", change.colour);
    return;
  }
  const { owner, name } = splitRef(ref);
  const module = draftPart(draft, owner);
  if (module?.kind !== "module") return;
  const pin = module.pins.find((one) => one.id === name);
  if (pin && change.printed !== undefined) put(pin, "printed", change.printed);
}
