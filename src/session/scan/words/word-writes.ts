import { type Colour, type Id, type Job, type PinRef, splitRef } from "../../../job/index.ts";
import { formatColour } from "../../../standards/index.ts";
import { draftPart } from "../../diagram/draft.ts";
import { renamePart, renamePin, whyNotId, whyNotPin } from "../../diagram/rename.ts";
import { setPartField, setWireField } from "../../diagram/set-field.ts";
import { setWords } from "../../diagram/set-words.ts";
import type { Amount, Meaning, WirePrint } from "./word-meaning.ts";

/** One thing that a printed word says of one thing of the drawing. */
export type WordWrite =
  | { readonly field: "name"; readonly ref: Id; readonly value: Id }
  | { readonly field: "label"; readonly ref: Id; readonly value: string }
  | { readonly field: "amps" | "watts" | "ohms"; readonly ref: Id; readonly value: number }
  | { readonly field: "printed"; readonly ref: PinRef; readonly value: string }
  | { readonly field: "mark"; readonly ref: PinRef; readonly value: string }
  | { readonly field: "number"; readonly ref: Id; readonly value: string }
  | { readonly field: "colour"; readonly ref: Id; readonly value: Colour }
  | { readonly field: "mm2" | "awg"; readonly ref: Id; readonly value: number };

type Part = Job["diagram"]["parts"][number];

/** Fields that a printed value with that unit sets, where it is plain which is meant. */
const VALUE_FIELDS: Readonly<
  Partial<
    Record<
      Amount["unit"],
      { readonly field: "amps" | "watts" | "ohms"; readonly kinds: readonly Part["kind"][] }
    >
  >
> = {
  A: { field: "amps", kinds: ["fuse", "breaker"] },
  W: { field: "watts", kinds: ["lamp"] },
  Ω: { field: "ohms", kinds: ["solenoid", "motor", "heater", "resistor", "horn", "potentiometer"] },
};

export const amountWrites = (part: Part, amounts: readonly Amount[]): WordWrite[] =>
  amounts.flatMap(({ unit, value }): WordWrite[] => {
    const about = VALUE_FIELDS[unit];
    return about?.kinds.includes(part.kind) && value > 0
      ? [{ field: about.field, ref: part.id, value }]
      : [];
  });

export function wireWrites(wire: Id, print: WirePrint): WordWrite[] {
  const { number, colour, mm2, awg } = print;
  return [
    ...(number === undefined ? [] : [{ field: "number", ref: wire, value: number } as const]),
    ...(colour === undefined ? [] : [{ field: "colour", ref: wire, value: colour } as const]),
    ...(mm2 === undefined ? [] : [{ field: "mm2", ref: wire, value: mm2 } as const]),
    ...(awg === undefined ? [] : [{ field: "awg", ref: wire, value: awg } as const]),
  ];
}

/** What a part is told by a word that is its name, its value or its label. */
export function partWrites(part: Part, meaning: Meaning): WordWrite[] {
  if (meaning.is === "name") {
    return [
      { field: "name", ref: part.id, value: meaning.id },
      ...amountWrites(part, meaning.amounts),
    ];
  }
  if (meaning.is === "amounts") return amountWrites(part, meaning.amounts);
  return meaning.is === "words" ? [{ field: "label", ref: part.id, value: meaning.text }] : [];
}

const NAMES: Readonly<Record<WordWrite["field"], string>> = {
  name: "name",
  label: "label",
  amps: "fuse value",
  watts: "power",
  ohms: "resistance",
  printed: "printed word",
  mark: "pin mark",
  number: "number",
  colour: "colour",
  mm2: "size",
  awg: "size",
};

const UNITS: Readonly<Partial<Record<WordWrite["field"], string>>> = {
  amps: " A",
  watts: " W",
  ohms: " Ω",
  mm2: " mm²",
};

/** `number 30-3`, `colour RD/WH`, `fuse value 60 A`. */
export function sayWrite(write: WordWrite): string {
  if (write.field === "colour") return `colour ${formatColour(write.value)}`;
  const value =
    write.field === "awg" ? `AWG ${write.value}` : `${write.value}${UNITS[write.field] ?? ""}`;
  return `${NAMES[write.field]} ${value}`;
}

/** What stands there now, as the user would read it; null for nothing, or for a name or mark given by the program. */
export function standing(job: Job, write: WordWrite): string | null {
  if (write.field === "name") return write.ref;
  if (write.field === "mark") return splitRef(write.ref).name;
  if (write.field === "printed") {
    const { owner, name } = splitRef(write.ref);
    const part = job.diagram.parts.find(({ id }) => id === owner);
    const pin = part?.kind === "module" ? part.pins.find(({ id }) => id === name) : undefined;
    return pin?.printed ?? null;
  }
  const thing =
    job.diagram.parts.find(({ id }) => id === write.ref) ??
    job.diagram.wires.find(({ id }) => id === write.ref);
  const value = (thing as Record<string, unknown> | undefined)?.[write.field];
  if (value === undefined) return null;
  return write.field === "colour" ? formatColour(value as Colour) : String(value);
}

/** Whether the drawing says so already. */
export function isWritten(job: Job, write: WordWrite): boolean {
  const now = standing(job, write);
  const wanted = write.field === "colour" ? formatColour(write.value) : String(write.value);
  if (now === null) return false;
  return write.field === "label" || write.field === "printed"
    ? now.toLowerCase() === wanted.toLowerCase()
    : now === wanted;
}

/** Why it can't be written; null when it can. A name that another part bears is exchanged with it. */
export function whyNotWrite(job: Job, write: WordWrite): string | null {
  if (write.field === "name") {
    const isPart = job.diagram.parts.some(({ id }) => id === write.value);
    return isPart ? null : whyNotId(job, write.ref, write.value);
  }
  if (write.field === "mark") {
    const { owner, name } = splitRef(write.ref);
    const part = job.diagram.parts.find(({ id }) => id === owner);
    return part ? whyNotPin(part, name, write.value) : "That part is no more.";
  }
  return null;
}

/** Does what words say. Names and marks come last, so that everything else still finds its thing. */
export function writeAll(draft: Job, writes: readonly WordWrite[]): Renames {
  const last = (write: WordWrite) => (write.field === "name" ? 2 : write.field === "mark" ? 1 : 0);
  const renamed = new Map<Id, Id>();
  const nowOf = (id: Id) => renamed.get(id) ?? id;
  for (const write of [...writes].sort((a, b) => last(a) - last(b))) {
    if (write.field === "name") rename(draft, nowOf(write.ref), write.value, renamed);
    else writeOne(draft, write);
  }
  return renamed;
}

/** Of parts that got another name: the name before. */
export type Renames = ReadonlyMap<Id, Id>;

function writeOne(draft: Job, write: Exclude<WordWrite, { field: "name" }>): void {
  const { ref } = write;
  if (write.field === "mm2" || write.field === "awg") {
    setWireField(draft, ref, write.field, write.value);
  } else if (write.field === "mark") {
    const { owner, name } = splitRef(ref);
    renamePin(draft, owner, name, write.value);
  } else if (write.field === "amps" || write.field === "watts" || write.field === "ohms") {
    setPartField(draft, ref, write.field, write.value);
  } else {
    setWords(draft, ref, { [write.field]: write.value });
  }
}

/** Where another part bears the name, that part takes the name that becomes free. */
function rename(draft: Job, old: Id, next: Id, renamed: Map<Id, Id>): void {
  if (old === next) return;
  const note = (from: Id, to: Id) => {
    const first = [...renamed].find(([, now]) => now === from)?.[0] ?? from;
    renamed.set(first, to);
  };
  if (!draftPart(draft, next)) {
    renamePart(draft, old, next);
    note(old, next);
    return;
  }
  const between = `${next}~`;
  renamePart(draft, next, between);
  renamePart(draft, old, next);
  renamePart(draft, between, old);
  const [firstOfOld, firstOfNext] = [old, next].map(
    (id) => [...renamed].find(([, now]) => now === id)?.[0] ?? id,
  ) as [Id, Id];
  renamed.set(firstOfOld, next);
  renamed.set(firstOfNext, old);
}
