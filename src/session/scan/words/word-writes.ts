import {
  type Colour,
  type Id,
  type Job,
  type Part,
  type PinRef,
  splitRef,
} from "../../../job/index.ts";
import { formatColour } from "../../../standards/index.ts";
import { idsInUse } from "../../changes/drawn-job.ts";
import { plain } from "../../diagram/draft.ts";
import { renamePart, renamePin, whyNotId, whyNotPin } from "../../diagram/rename.ts";
import type { Amount, Meaning, WirePrint } from "./word-meaning.ts";

/** One thing that a printed word says of one thing of the drawing. */
export type WordWrite =
  | { readonly field: "name"; readonly ref: Id; readonly value: Id }
  | { readonly field: "label"; readonly ref: Id; readonly value: string }
  /** What works a switch, where its label says so plainly. */
  | { readonly field: "control"; readonly ref: Id; readonly value: "key" | "isolator" }
  | { readonly field: "amps" | "watts" | "ohms"; readonly ref: Id; readonly value: number }
  | { readonly field: "printed"; readonly ref: PinRef; readonly value: string }
  | { readonly field: "mark"; readonly ref: PinRef; readonly value: string }
  | { readonly field: "number"; readonly ref: Id; readonly value: string }
  | { readonly field: "colour"; readonly ref: Id; readonly value: Colour }
  | { readonly field: "mm2" | "awg"; readonly ref: Id; readonly value: number };

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
  return meaning.is === "words" ? labelWrites(part, meaning.text) : [];
}

/** What a part is told by its whole label. */
export function labelWrites(part: Part, text: string): WordWrite[] {
  const label = { field: "label", ref: part.id, value: text } as const;
  const control = part.kind === "switch" ? controlSaid(text) : null;
  return control === null ? [label] : [label, { field: "control", ref: part.id, value: control }];
}

/** `KEY OFF-RUN-START`, `BATTERY ISOLATOR`. Common practice, no source. */
function controlSaid(text: string): "key" | "isolator" | null {
  if (/\bisolator\b/i.test(text)) return "isolator";
  return /\b(?:key|ignition)\b/i.test(text) ? "key" : null;
}

const CONTROLS_SAID = { key: "worked by a key", isolator: "a battery isolator" } as const;

const NAMES: Readonly<Record<WordWrite["field"], string>> = {
  name: "name",
  label: "label",
  control: "worked by",
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
  if (write.field === "control") return CONTROLS_SAID[write.value];
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

/** Of each job which names are refused: to ask takes a look at all of it. */
const refusals = new WeakMap<Job, Map<Id, string | null>>();

/** Why no part can bear a name; null when one can. One that a part bears already can be exchanged. */
function whyNotName(
  job: Job,
  { ref, value }: { readonly ref: Id; readonly value: Id },
): string | null {
  const known = refusals.get(job) ?? new Map<Id, string | null>();
  refusals.set(job, known);
  const before = known.get(value);
  if (before !== undefined) return before;
  const isPart = job.diagram.parts.some(({ id }) => id === value);
  const why = isPart ? null : whyNotId(job, ref, value);
  known.set(value, why);
  return why;
}

/** Why it can't be written; null when it can. */
export function whyNotWrite(job: Job, write: WordWrite): string | null {
  if (write.field === "name") return whyNotName(job, write);
  if (write.field === "mark") {
    const { owner, name } = splitRef(write.ref);
    const part = job.diagram.parts.find(({ id }) => id === owner);
    return part ? whyNotPin(part, name, write.value) : "That part is no more.";
  }
  return null;
}

/** Does what words say. Marks and names come last, so that everything else still finds its thing. */
export function writeAll(draft: Job, writes: readonly WordWrite[]): Renames {
  writeFields(draft, writes);
  for (const write of writes) {
    if (write.field !== "mark") continue;
    const { owner, name } = splitRef(write.ref);
    renamePin(draft, owner, name, write.value);
  }
  return renameAll(
    draft,
    writes.filter((write) => write.field === "name"),
  );
}

/** Of parts that got another name: the name before. */
export type Renames = ReadonlyMap<Id, Id>;

/** One look through the plain data for all of them: drafts are slow. */
function writeFields(draft: Job, writes: readonly WordWrite[]): void {
  const { parts, wires } = plain(draft).diagram;
  const numbered = (list: readonly { readonly id: Id }[]) =>
    new Map(list.map(({ id }, index) => [id, index]));
  const [partAt, wireAt] = [numbered(parts), numbered(wires)];
  for (const write of writes) {
    if (write.field === "name" || write.field === "mark") continue;
    if (write.field === "printed") {
      const { owner, name } = splitRef(write.ref);
      const part = draft.diagram.parts[partAt.get(owner) ?? -1];
      const pin = part?.kind === "module" && part.pins.find(({ id }) => id === name);
      if (pin) pin.printed = write.value;
      continue;
    }
    const thing =
      draft.diagram.parts[partAt.get(write.ref) ?? -1] ??
      draft.diagram.wires[wireAt.get(write.ref) ?? -1];
    if (thing) Object.assign(thing, { [write.field]: write.value });
  }
}

/**
 * Gives parts their names, each but once where that is possible: those first whose new name is free. Where
 * a part that keeps its name bears the wanted one, the two exchange theirs.
 */
function renameAll(
  draft: Job,
  wanted: readonly { readonly ref: Id; readonly value: Id }[],
): Renames {
  const inUse = idsInUse(draft);
  const parts = new Set(plain(draft).diagram.parts.map(({ id }) => id));
  const wantedBy = new Map<Id, Id>();
  for (const { ref, value } of wanted) {
    const isFree = parts.has(value) || !inUse.has(value);
    // Of two parts that would have one name the first has it.
    if (isFree && !wantedBy.has(value)) wantedBy.set(value, ref);
  }
  const toDo = new Map([...wantedBy].map(([next, old]) => [old, next]));
  for (const [old, next] of [...toDo]) {
    if (!parts.has(next) || toDo.has(next)) continue;
    let free = old;
    for (let by = wantedBy.get(free); by !== undefined; by = wantedBy.get(free)) free = by;
    toDo.set(next, free);
    wantedBy.set(free, next);
  }
  for (const [old, next] of [...toDo]) if (old === next) toDo.delete(old);
  const done = new Map<Id, Id>();
  const put = (old: Id, next: Id) => {
    renamePart(draft, old, next);
    inUse.delete(old);
    inUse.add(next);
  };
  const waiting = new Map(toDo);
  /** Of a part that stands aside while its name goes round a ring: the name it will have. */
  const aside: { readonly from: Id; readonly now: Id; readonly next: Id }[] = [];
  while (waiting.size > 0) {
    const free = [...waiting].find(([, next]) => !inUse.has(next));
    const [old, next] = free ?? ([...waiting][0] as [Id, Id]);
    waiting.delete(old);
    if (free) {
      put(old, next);
      done.set(old, next);
    } else {
      const now = `${old}~`;
      put(old, now);
      aside.push({ from: old, now, next });
    }
    for (const one of [...aside]) {
      if (inUse.has(one.next)) continue;
      put(one.now, one.next);
      done.set(one.from, one.next);
      aside.splice(aside.indexOf(one), 1);
    }
  }
  return done;
}
