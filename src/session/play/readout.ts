import { circuitOf, type LineState, type LiveState, type PointState } from "../../circuit/index.ts";
import {
  type Id,
  isFixedProbe,
  type Job,
  type Part,
  type Probe,
  splitRef,
} from "../../job/index.ts";
import { wordsForProbe } from "../../readings/index.ts";
import { formatColour } from "../../standards/index.ts";
import { operablesOf } from "./operables.ts";
import type { Leads } from "./operate-state.ts";
import { ampsWords, besidesLine, LEAST_AMPS, partWords, voltsWords } from "./play-words.ts";

/** What is told of a wire, pin, cavity or part when it is asked for. */
export interface Readout {
  readonly title: string;
  /** How it lies; null for a part, which has more than one point. */
  readonly line: LineState | null;
  /** One thing each, the chief one first; how it lies is not said again. */
  readonly says: readonly string[];
}

/** Null when nothing of that name is part of the machine now. */
export function readoutOf(job: Job, machine: Id, live: LiveState, ref: string): Readout | null {
  const wire = live.wires[ref];
  if (wire) return ofWire(job, machine, ref, wire, wire.amps);
  const part = operablesOf(job, machine).byId.get(ref);
  if (part) return ofPart(job, part, live);
  const point = live.pins[ref] ?? live.cavities[ref];
  if (!point) return isCavity(job, ref) ? ofUnmatched(job, ref) : null;
  const says = [...besidesLine(point), ...amps(job, machine, live, ref)];
  return { title: placeTitle(job, ref), line: point.state, says };
}

/** The current of the one wire that ends at a pin or in a cavity; with more than one there is no one current. */
function amps(job: Job, machine: Id, live: LiveState, ref: string): readonly string[] {
  const pin = job.links.find((link) => link.cavity === ref)?.pin ?? ref;
  const { wires } = circuitOf(job, machine);
  const [wire, another] = wires.filter((one) => one.from === pin || one.to === pin);
  const flow = wire && !another ? (live.wires[wire.id]?.amps ?? 0) : 0;
  return Math.abs(flow) < LEAST_AMPS ? [] : [`${ampsWords(flow)} in its wire`];
}

/**
 * What stands between the two leads, in words: volts only where the drawing says what both are held
 * to, and a ghost voltage only where one of them is surely tied to nothing.
 */
export function leadsWords(job: Job, live: LiveState | null, leads: Leads): string {
  const { red, black, volts } = leads;
  if (red === null || black === null) return "Place both leads";
  if (!live || volts === undefined) return "…";
  for (const probe of [red, black]) {
    const unsaid = unsaidAt(job, live, probe);
    if (unsaid !== null) return unsaid;
  }
  if (volts === null) return "Nothing ties the two together: a meter may show a ghost voltage";
  return voltsWords(volts);
}

/** Why nobody knows what is at a place, a sentence; null where the drawing says it. */
function unsaidAt(job: Job, live: LiveState, probe: Probe): string | null {
  if (isFixedProbe(probe)) return null;
  const point = live.pins[probe] ?? live.cavities[probe];
  if (point?.state === "unknown")
    return `Not known: what is at ${wordsForProbe(job, probe)} depends on what nobody has said`;
  if (point || !isCavity(job, probe)) return null;
  return `Not known: no pin is matched to ${wordsForProbe(job, probe)}, so the drawing does not say what is there`;
}

const isCavity = (job: Job, ref: string): boolean =>
  !isFixedProbe(ref) && job.plugs.some(({ id }) => id === splitRef(ref).owner);

const ofUnmatched = (job: Job, ref: string): Readout => ({
  title: placeTitle(job, ref),
  line: null,
  says: ["no pin is matched to it, so the drawing does not say what is there"],
});

function placeTitle(job: Job, ref: string): string {
  if (isFixedProbe(ref)) return wordsForProbe(job, ref);
  const { owner, name } = splitRef(ref);
  return isCavity(job, ref) ? `${owner} cavity ${name}` : `${owner} pin ${name}`;
}

function ofWire(job: Job, machine: Id, id: Id, point: PointState, amps: number): Readout {
  const wire = wireNamed(job, machine, id);
  const code = [wire?.number, wire?.colour && formatColour(wire.colour)].filter(Boolean).join(" ");
  const says = [...besidesLine(point)];
  if (wire && Math.abs(amps) >= LEAST_AMPS) {
    const [from, to] = amps > 0 ? [wire.from, wire.to] : [wire.to, wire.from];
    says.push(`${ampsWords(amps)} from ${splitRef(from).owner} to ${splitRef(to).owner}`);
  } else if (point.state !== "unknown") says.push("no current");
  return { title: code ? `${id} · ${code}` : id, line: point.state, says };
}

const wireNamed = (job: Job, machine: Id, id: Id) =>
  circuitOf(job, machine).wires.find((one) => one.id === id);

function ofPart(job: Job, part: Part, live: LiveState): Readout {
  const state = live.parts[part.id];
  const says = [partWords(part, state)];
  if (state && state.share > 0.005) {
    const volts = state.share * job.systemVoltage;
    says.push(`${volts.toFixed(1)} V across it, ${Math.round(state.share * 100)} % of nominal`);
  }
  if (state && state.amps >= LEAST_AMPS) says.push(ampsWords(state.amps));
  const title = part.label ? `${part.id} · ${part.label}` : part.id;
  return { title, line: null, says: says.filter((one) => one !== "") };
}
