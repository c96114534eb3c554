import type { Job, Plug } from "../../../src/job/index.ts";
import { A1 } from "./module.ts";

/** Millimetres between cavities; the plug is invented like everything else here. */
const PITCH = 6;

/** Two rows of four, marks across from the top left as seen from the wire side; 7 and 8 not used. */
export const X1: Plug = {
  id: "X1",
  name: "pump hold module, 8-way",
  side: "wire",
  holds: "sockets",
  cavities: Array.from({ length: 8 }, (_, index) => ({
    mark: String(index + 1),
    at: [(index % 4) * PITCH, Math.floor(index / 4) * PITCH],
    ...(index === 6 ? { empty: true } : {}),
    ...(index === 7 ? { empty: true, blocked: true } : {}),
  })),
  outline: { shape: "rectangle", at: [-5, -5], width: 28, height: 16, radius: 2 },
  keys: [
    { kind: "latch", at: [9, -6.5], width: 8, height: 3 },
    { kind: "key", at: [23.5, 3], width: 1.5, height: 4 },
  ],
};

export const LINKS: Job["links"] = A1.pins.map(({ id }) => ({
  pin: `A1:${id}`,
  cavity: `X1:${id}`,
}));
