/** Random edits of what is drawn and measured, such as change where current can go. */
import type { Random } from "../../src/base/index.ts";
import { freeId, idsOf, type Job, type Part } from "../../src/job/index.ts";
import type { RandomEdit } from "./random-edit.ts";
import {
  cavityRefsOf,
  pinRefsOf,
  randomColour,
  randomPart,
  randomPoint,
  randomReading,
} from "./random-job.ts";

type Step = (draft: Job, random: Random) => void;

const newId = (job: Job, letter: string) => freeId(idsOf(job), letter);

const pick = <T>(random: Random, list: readonly T[]): T | undefined =>
  list.length === 0 ? undefined : random.pick(list);

/** A part by its place in the list, so that only this one is looked at in the draft. */
const somePart = (draft: Job, random: Random, wanted: (part: Part) => boolean) =>
  pick(
    random,
    draft.diagram.parts.filter((part) => wanted(part as Part)),
  );

const STEPS: Readonly<Record<string, Step>> = {
  "Draw a wire": (draft, random) => {
    const pins = pinRefsOf(draft);
    if (pins.length === 0) return;
    const wire = { id: newId(draft, "W"), from: random.pick(pins), to: random.pick(pins) };
    draft.diagram.wires.splice(random.below(draft.diagram.wires.length + 1), 0, wire);
  },
  "Delete a wire": (draft, random) => {
    draft.diagram.wires.splice(random.below(draft.diagram.wires.length), 1);
  },
  "Delete wires side by side": (draft, random) => {
    const { wires } = draft.diagram;
    wires.splice(random.below(wires.length), 2 + random.below(12));
  },
  "Put a wire elsewhere": (draft, random) => {
    const wire = pick(random, draft.diagram.wires);
    const pins = pinRefsOf(draft);
    if (wire && pins.length > 0) wire[random.pick(["from", "to"] as const)] = random.pick(pins);
  },
  "Place a part on a wire": (draft, random) => {
    const wire = pick(random, draft.diagram.wires);
    const kind = random.pick(["fuse", "lamp", "diode", "resistor", "switch"] as const);
    const part = randomPart(random, newId(draft, "N"), kind);
    draft.diagram.parts.splice(random.below(draft.diagram.parts.length + 1), 0, part);
    if (!wire) return;
    const [near, far] = kind === "diode" ? ["A", "K"] : ["1", "2"];
    const { to } = wire;
    wire.to = `${part.id}:${near}`;
    draft.diagram.wires.push({ id: newId(draft, "W"), from: `${part.id}:${far}`, to });
  },
  "Delete a part": (draft, random) => {
    const part = pick(random, draft.diagram.parts);
    if (!part) return;
    const { diagram } = draft;
    const isAt = (ref: string) => ref.startsWith(`${part.id}:`);
    diagram.parts = diagram.parts.filter((one) => one.id !== part.id);
    diagram.wires = diagram.wires.filter((wire) => !isAt(wire.from) && !isAt(wire.to));
  },
  "Move a part": (draft, random) => {
    const part = pick(random, draft.diagram.parts);
    if (part) part.at = randomPoint(random);
  },
  "Put a part first": (draft, random) => {
    const [part] = draft.diagram.parts.splice(random.below(draft.diagram.parts.length), 1);
    if (part) draft.diagram.parts.unshift(part);
  },
  "Change a switch's rest": (draft, random) => {
    const part = somePart(draft, random, ({ kind }) => kind === "switch");
    if (part?.kind === "switch") part.rest = random.pick(part.positions);
  },
  "Let a switch spring back": (draft, random) => {
    const part = somePart(draft, random, ({ kind }) => kind === "switch");
    if (part?.kind !== "switch") return;
    if (part.springReturn === undefined) part.springReturn = true;
    else delete part.springReturn;
  },
  "Change a switch's control": (draft, random) => {
    const part = somePart(draft, random, ({ kind }) => kind === "switch");
    if (part?.kind === "switch") part.control = random.pick(["key", "operator", "interlock"]);
  },
  "Let a relay latch": (draft, random) => {
    const part = somePart(draft, random, ({ kind }) => kind === "relay");
    if (part?.kind === "relay") part.latching = !part.latching;
  },
  "Put a ground elsewhere": (draft, random) => {
    const part = somePart(draft, random, ({ kind }) => kind === "ground");
    if (part) part.place = random.pick(["frame", "engine", "cab"]);
  },
  "Name what lies beyond the page": (draft, random) => {
    const part = somePart(draft, random, ({ kind }) => kind === "offpage");
    if (part?.kind !== "offpage") return;
    if (part.is === undefined) part.is = random.pick(["supply", "ground", "switched-supply"]);
    else delete part.is;
  },
  "Label a page end": (draft, random) => {
    const part = somePart(draft, random, ({ kind }) => kind === "offpage");
    if (part) part.label = random.pick(["to cab", "to rear"]);
  },
  "Set a part's ohms": (draft, random) => {
    const part = somePart(draft, random, (one) => "ohms" in one);
    if (part && "ohms" in part) part.ohms = 1 + random.below(50);
  },
  "Type a printed word": (draft, random) => {
    const part = somePart(draft, random, ({ kind }) => kind === "module");
    const pin = part?.kind === "module" ? pick(random, part.pins) : undefined;
    if (pin) pin.printed = random.pick(["GND", "OUT", "", "B+", "LAMP SW"]);
  },
  "Colour a wire": (draft, random) => {
    const wire = pick(random, draft.diagram.wires);
    if (wire) wire.colour = randomColour(random);
  },
  "Set a wire's length": (draft, random) => {
    const wire = pick(random, draft.diagram.wires);
    if (wire) Object.assign(wire, { mm2: 1, metres: 1 + random.below(9) });
  },
  "Tie a pin to a cavity": (draft, random) => {
    const pin = pick(random, pinRefsOf(draft));
    const cavity = pick(random, cavityRefsOf(draft));
    if (pin && cavity) draft.links.push({ pin, cavity });
  },
  "Untie a cavity": (draft, random) => {
    draft.links.splice(random.below(draft.links.length), 1);
  },
  "Take a reading": (draft, random) => {
    const machine = pick(random, draft.machines);
    machine?.readings.push(randomReading(random, newId(draft, "reading"), draft));
  },
  "Delete a reading": (draft, random) => {
    const readings = pick(random, draft.machines)?.readings;
    readings?.splice(random.below(readings.length), 1);
  },
  "Refit the machine": (draft, random) => {
    const machine = pick(random, draft.machines);
    const gone = pick(random, draft.diagram.wires);
    if (!machine || !gone) return;
    machine.changes =
      machine.changes === undefined ? [{ note: "refit", without: [gone.id] }] : undefined;
    if (machine.changes === undefined) delete machine.changes;
  },
};

/** One of these, chosen and carried out by `random` alone. */
export function wiringEdit(random: Random): RandomEdit {
  const [label, step] = random.pick(Object.entries(STEPS));
  return { label, change: (draft) => step(draft, random) };
}
