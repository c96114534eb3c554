import { chassisPlace, restPosition } from "../circuit/index.ts";
import { type Id, type Job, ownerOf, type Part, type Probe, type Reading } from "../job/index.ts";
import { batteriesOf, idsOff, pinsOfCavity } from "./cavity-pins.ts";
import { takenAt } from "./judge-reading.ts";
import { type Shared, sharedFor } from "./shared.ts";

/** What a reading is a reading of. */
export interface ThingRead {
  /** Equal for readings of the same two points, in the same state and by the same instrument. */
  readonly key: string;
  /** The leads are the other way round than in another one of this key: volts and amps turn their sign. */
  readonly turned: boolean;
}

/**
 * Readings that should have come out alike. A switch named where it rests is as good as not named; a
 * cavity and its pin are one point plugged in and two unplugged; ground parts of one place are one.
 */
export function thingRead(job: Job, machine: Id, reading: Reading): ThingRead {
  const shared = sharedFor(job, machine, takenAt(reading));
  const { quantity, red, black, when, with: instrument } = reading;
  const points = [red, black].map((probe) => pointOf(shared, reading, probe));
  const [from = "", to = ""] = points;
  // an ohmmeter sends its current one way only, and a diode minds
  const turned = quantity !== "ohms" && from > to;
  const switches = Object.entries(when.switches ?? {})
    .filter(([id, position]) => position !== restOf(shared.parts.get(id)))
    .sort(([a], [b]) => (a < b ? -1 : 1));
  const key = JSON.stringify([
    quantity,
    turned ? [to, from] : points,
    switches,
    sorted(when.unplugged),
    sorted(when.removed),
    when.standIn ?? null,
    when.engine ?? "off",
    instrument ?? "meter",
  ]);
  return { key, turned };
}

const sorted = (ids: readonly Id[] = []): readonly Id[] => [...new Set(ids)].sort();

const restOf = (part: Part | undefined): string | undefined =>
  part?.kind === "switch" ? restPosition(part) : undefined;

function pointOf(shared: Shared, { quantity, when }: Reading, probe: Probe): string {
  const { job, parts } = shared;
  if (probe === "chassis") return "ground chassis";
  if (probe === "battery+" || probe === "battery-") {
    const [battery] = batteriesOf(shared);
    return `${battery ?? "battery"}:${probe === "battery+" ? "+" : "-"}`;
  }
  const off = new Set(idsOff(when));
  const owner = ownerOf(probe);
  const part = parts.get(owner);
  if (part?.kind === "ground" && !off.has(owner)) return `ground ${chassisPlace(part)}`;
  const [pin, another] = pinsOfCavity(job, probe);
  // an ammeter lies between the two halves of an opened joint
  if (pin === undefined || another !== undefined || quantity === "amps") return probe;
  return off.has(owner) || off.has(ownerOf(pin)) ? probe : pin;
}
