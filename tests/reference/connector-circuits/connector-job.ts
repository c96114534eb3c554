import type { Job, RoleName } from "../../../src/job/index.ts";
import { parseColour } from "../../../src/standards/index.ts";
import type { End, PublishedPin, Standard } from "./published-pin.ts";
import { towingVehicle } from "./towing-vehicle.ts";
import { trailer } from "./trailer.ts";

export type WordOf = (pin: PublishedPin) => string;

export const asPublished: WordOf = ({ words }) => words;

/** What the trailer is fed with or told, and what it tells the towing vehicle. */
const TO_TOWING: readonly PublishedPin["carries"][] = ["wear", "pressure", "code", "warning"];
const FEEDS: readonly PublishedPin["carries"][] = ["permanent", "ignition", "electronics"];
const UNDIRECTED: readonly PublishedPin["carries"][] = ["ground", "data", "nothing", "charge"];

/** The short form with the direction that the pin has at one end: `12V IN` there, `12V OUT` here. */
export const shortAt =
  (end: End): WordOf =>
  ({ carries, short }) => {
    if (UNDIRECTED.includes(carries)) return short;
    return isIncoming(end, carries) ? `${short} IN` : `${short} OUT`;
  };

const isIncoming = (end: End, carries: PublishedPin["carries"]) =>
  (end === "towing") === TO_TOWING.includes(carries);

/** What the short form says by hand; null for words whose sense does not change with the end. */
export function saidAt(end: End, { carries }: PublishedPin): RoleName | null {
  if (UNDIRECTED.includes(carries)) return null;
  if (!isIncoming(end, carries)) return "output";
  return FEEDS.includes(carries) ? "supply" : "input";
}

/**
 * One end of the connector as module A1 with the printed words of a sheet, its other vehicle as the
 * circuit, and a plug X1 with the marks of the standard. The wires are drawn in the sheet's colours;
 * `machine` are those that the vehicle at hand has.
 */
export function connectorJob(
  end: End,
  circuit: Standard,
  word: WordOf,
  { sheet = circuit, machine = sheet }: { sheet?: Standard; machine?: Standard } = {},
): Job {
  const { job } = (end === "trailer" ? towingVehicle : trailer)(circuit).part("module", "A1", {
    pins: sheet.pins.map((pin) => {
      const printed = word(pin);
      return printed === "" ? { id: pin.mark } : { id: pin.mark, printed };
    }),
  });
  job.plugs.push({
    id: "X1",
    side: "mating",
    cavities: sheet.pins.map(({ mark, carries }, index) => ({
      mark,
      at: [index * 5, 0],
      ...(carries === "nothing" ? { empty: true } : {}),
    })),
  });
  for (const { mark, colour, carries } of sheet.pins) {
    if (carries === "nothing") continue;
    job.links.push({ pin: `A1:${mark}`, cavity: `X1:${mark}` });
    const drawn = parseColour(colour);
    for (const wire of job.diagram.wires) {
      if (drawn && [wire.from, wire.to].includes(`A1:${mark}`)) wire.colour = drawn;
    }
  }
  for (const { mark, colour } of machine.pins) {
    const seen = parseColour(colour);
    if (seen) job.machines[0]?.wires.push({ cavity: `X1:${mark}`, colour: seen });
  }
  return job;
}
