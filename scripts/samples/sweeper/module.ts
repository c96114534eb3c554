import type { PartOf } from "../../../src/job/index.ts";

/**
 * The judged module. What its pins really do, from the circuit: 1 key feed, 2 button, 3 pump
 * relay, 4 ground, 5 level switch, 6 low-water lamp. Whoever lettered the sheet moved the first
 * four words one pin on, and the fourth came round to pin 1.
 */
const PRINTED = {
  "1": "GND",
  "2": "IGN",
  "3": "TRIG",
  "4": "OUT",
  "5": "LEVEL IN",
  "6": "LP",
} as const;

/** Pixels of the drawing. */
const SIZE: [number, number] = [1080, 240];
const FIRST_PIN = -450;
const PITCH = 180;

export const A1: PartOf<"module"> = {
  id: "A1",
  kind: "module",
  sheet: "sheet7",
  at: [2250, 520],
  turn: 0,
  unit: 20,
  label: "pump hold module",
  size: SIZE,
  pins: Object.entries(PRINTED).map(([id, printed], index) => ({
    id,
    printed,
    at: [FIRST_PIN + index * PITCH, SIZE[1] / 2],
  })),
  power: { supply: ["1"], ground: ["4"], minVolts: 18 },
  behaviour: {
    paths: [
      { between: ["1", "3"], input: "2", active: "high", does: "toggle" },
      { between: ["1", "6"], input: "5", active: "low", does: "follow" },
    ],
    loads: [{ between: ["1", "4"], ohms: 820 }],
  },
};
