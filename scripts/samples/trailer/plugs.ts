import type { Job, Plug } from "../../../src/job/index.ts";
import { ISO_12098 } from "./iso-12098.ts";
import { BRAKE_UNIT, TOWING_SIDE } from "./plan.ts";

const OUTER = 10;

/** Ten cavities around five: an arrangement of ours, since the standard's drawing is not public. */
function ringPlace(index: number): [number, number] {
  const inner = index >= OUTER;
  const turn = inner ? (index - OUTER) / (ISO_12098.length - OUTER) : index / OUTER;
  const radius = inner ? 7.5 : 15;
  const angle = 2 * Math.PI * turn - Math.PI / 2;
  const rounded = (value: number) => Math.round(value * 100) / 100;
  return [rounded(radius * Math.cos(angle)), rounded(radius * Math.sin(angle))];
}

const X1: Plug = {
  id: "X1",
  name: "ISO 12098, 15-pole (places of the cavities are not the standard's)",
  side: "wire",
  holds: "pins",
  cavities: ISO_12098.map((row, index) => ({ mark: row.pin, at: ringPlace(index) })),
  outline: { shape: "circle", at: [0, 0], radius: 20 },
  keys: [{ kind: "key", at: [0, -20.5], width: 5, height: 2 }],
};

const X2: Plug = {
  id: "X2",
  name: "trailer brake unit, 4-way",
  side: "wire",
  holds: "sockets",
  cavities: BRAKE_UNIT.pins.map(({ id }, index) => ({
    mark: id,
    at: [(index % 2) * 6, Math.floor(index / 2) * 6],
  })),
  outline: { shape: "rectangle", at: [-5, -5], width: 16, height: 16, radius: 2 },
  keys: [{ kind: "latch", at: [3, -6], width: 6, height: 2 }],
};

export const PLUGS: readonly Plug[] = [X1, X2];

export const LINKS: Job["links"] = [
  ...TOWING_SIDE.pins.map(({ id }) => ({ pin: `A1:${id}`, cavity: `X1:${id}` })),
  ...BRAKE_UNIT.pins.map(({ id }) => ({ pin: `A2:${id}`, cavity: `X2:${id}` })),
];
