/** Random edits of the kinds that a user makes, each one intention and so one undo step. */
import type { Random } from "../../src/base/index.ts";
import { freeId, type Id, idsOf, type Job, ownerOf, splitRef } from "../../src/job/index.ts";
import {
  cavityRefsOf,
  pinRefsOf,
  randomColour,
  randomMachine,
  randomPart,
  randomPlug,
  randomPoint,
  randomReading,
  randomWire,
} from "./random-job.ts";

export interface RandomEdit {
  readonly label: string;
  readonly change: (draft: Job) => void;
}

type Step = (draft: Job, random: Random) => void;

const newId = (job: Job, letter: string): Id => freeId(idsOf(job), letter);

const pick = <T>(random: Random, list: T[]): T | undefined =>
  list.length === 0 ? undefined : random.pick(list);

const insert = <T>(random: Random, list: T[], one: T) =>
  list.splice(random.below(list.length + 1), 0, one);

const removeAt = <T>(random: Random, list: T[]) =>
  list.length === 0 ? [] : list.splice(random.below(list.length), 1);

/** A part taken away with all that hangs on it. */
function removePart(draft: Job, id: Id): void {
  const { diagram } = draft;
  diagram.parts = diagram.parts.filter((part) => part.id !== id);
  diagram.wires = diagram.wires.filter(
    (wire) => ![wire.from, wire.to].some((end) => ownerOf(end) === id),
  );
  draft.links = draft.links.filter((link) => ownerOf(link.pin) !== id);
}

/** A part by another name, everywhere it is named. */
function renamePart(draft: Job, from: Id, to: Id): void {
  const renamed = (ref: string) => (ownerOf(ref) === from ? `${to}:${splitRef(ref).name}` : ref);
  for (const part of draft.diagram.parts) if (part.id === from) part.id = to;
  for (const wire of draft.diagram.wires) {
    wire.from = renamed(wire.from);
    wire.to = renamed(wire.to);
  }
  for (const link of draft.links) link.pin = renamed(link.pin);
  for (const { readings } of draft.machines) {
    for (const reading of readings) {
      reading.red = renamed(reading.red);
      reading.black = renamed(reading.black);
    }
  }
}

const STEPS: Readonly<Record<string, Step>> = {
  "Name the job": (draft, random) => {
    draft.title = `Job ${random.below(1000)}`;
  },
  "Place a part": (draft, random) => {
    insert(random, draft.diagram.parts, randomPart(random, newId(draft, "P")));
  },
  "Move parts": (draft, random) => {
    for (const part of draft.diagram.parts) if (random.chance(0.5)) part.at = randomPoint(random);
  },
  "Nudge a part": (draft, random) => {
    const part = pick(random, draft.diagram.parts);
    if (part) part.at[0] += 1;
  },
  "Turn a part": (draft, random) => {
    const part = pick(random, draft.diagram.parts);
    if (part) part.turn = (part.turn + 90) % 360;
  },
  "Label a part": (draft, random) => {
    const part = pick(random, draft.diagram.parts);
    if (!part) return;
    if (part.label === undefined) part.label = "new";
    else delete part.label;
  },
  "Rename a part": (draft, random) => {
    const part = pick(random, draft.diagram.parts);
    if (part) renamePart(draft, part.id, newId(draft, "Q"));
  },
  "Delete a part": (draft, random) => {
    const part = pick(random, draft.diagram.parts);
    if (part) removePart(draft, part.id);
  },
  "Change a printed word": (draft, random) => {
    const modules = draft.diagram.parts.filter((part) => part.kind === "module");
    const pin = pick(random, pick(random, modules)?.pins ?? []);
    if (pin) pin.printed = random.pick(["GND", "OUT", "", "B+"]);
  },
  "Add a module's pin": (draft, random) => {
    const module = pick(
      random,
      draft.diagram.parts.filter((part) => part.kind === "module"),
    );
    module?.pins.push({ id: String(module.pins.length + 1) });
  },
  "Draw a wire": (draft, random) => {
    const wire = randomWire(random, newId(draft, "W"), draft);
    if (wire) insert(random, draft.diagram.wires, wire);
  },
  "Drag a wire's corner": (draft, random) => {
    const wire = pick(random, draft.diagram.wires);
    if (!wire) return;
    wire.path ??= [];
    if (random.chance(0.3)) removeAt(random, wire.path);
    else insert(random, wire.path, randomPoint(random));
  },
  "Colour a wire": (draft, random) => {
    const wire = pick(random, draft.diagram.wires);
    if (wire) wire.colour = randomColour(random);
  },
  "Take a wire's colour away": (draft, random) => {
    const wire = pick(random, draft.diagram.wires);
    if (wire) delete wire.colour;
  },
  "Delete a wire": (draft, random) => {
    removeAt(random, draft.diagram.wires);
  },
  "Delete what is chosen": (draft, random) => {
    const chosen = draft.diagram.parts.filter(() => random.chance(0.3)).map((part) => part.id);
    for (const id of chosen) removePart(draft, id);
  },
  "Draw a plug": (draft, random) => {
    draft.plugs.push(randomPlug(random, newId(draft, "X")));
  },
  "Mark a cavity": (draft, random) => {
    const plug = pick(random, draft.plugs);
    const cavity = pick(random, plug?.cavities ?? []);
    if (!plug || !cavity) return;
    const [from, to] = [`${plug.id}:${cavity.mark}`, `M${random.below(50)}`];
    for (const link of draft.links) if (link.cavity === from) link.cavity = `${plug.id}:${to}`;
    cavity.mark = to;
  },
  "Delete a plug": (draft, random) => {
    const [plug] = removeAt(random, draft.plugs);
    if (plug) draft.links = draft.links.filter((link) => ownerOf(link.cavity) !== plug.id);
  },
  "Tie a pin to a cavity": (draft, random) => {
    const pin = pick(random, pinRefsOf(draft));
    const cavity = pick(random, cavityRefsOf(draft));
    if (!pin || !cavity) return;
    draft.links = draft.links.filter((link) => link.pin !== pin && link.cavity !== cavity);
    draft.links.push({ pin, cavity });
  },
  "Untie a cavity": (draft, random) => {
    removeAt(random, draft.links);
  },
  "Set the order of the links": (draft) => {
    draft.links.reverse();
  },
  "Add a machine": (draft, random) => {
    draft.machines.push(randomMachine(random, newId(draft, "machine"), draft));
  },
  "Colour a cavity's wire": (draft, random) => {
    const machine = pick(random, draft.machines);
    const cavity = pick(random, cavityRefsOf(draft));
    if (!machine || !cavity) return;
    machine.wires = machine.wires.filter((wire) => wire.cavity !== cavity);
    machine.wires.push({ cavity, colour: randomColour(random) });
  },
  "Take a reading": (draft, random) => {
    const machine = pick(random, draft.machines);
    machine?.readings.push(randomReading(random, newId(draft, "reading"), draft));
  },
  "Delete a reading": (draft, random) => {
    removeAt(random, pick(random, draft.machines)?.readings ?? []);
  },
  "Teach a word": (draft, random) => {
    draft.words ??= [];
    insert(random, draft.words, { printed: `W${random.below(9)}`, role: "output" });
  },
  "Change nothing": () => {},
};

/** One of the user's intentions, chosen and carried out by `random` alone. */
export function randomEdit(random: Random): RandomEdit {
  const [label, step] = random.pick(Object.entries(STEPS));
  return { label, change: (draft) => step(draft, random) };
}
