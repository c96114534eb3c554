import type { Colour } from "../../../src/job/index.ts";
import type { PlannedWire } from "../drawing/plan.ts";
import type { Leg } from "../drawing/route.ts";

type Base = Colour["base"];

interface Print {
  readonly on?: number;
  readonly at?: number;
  readonly beside?: boolean;
}

/** A leg too short to write along. */
const BESIDE: Print = { beside: true };

function wire(
  id: string,
  from: string,
  to: string,
  number: string,
  colour: Base | readonly [Base, Base],
  mm2: number,
  legs: readonly Leg[] = [],
  print: Print = {},
): PlannedWire {
  return {
    id,
    from,
    to,
    number,
    colour: typeof colour === "string" ? { base: colour } : { base: colour[0], tracer: colour[1] },
    mm2,
    legs,
    ...(print.on === undefined ? {} : { printOn: print.on }),
    ...(print.at === undefined ? {} : { printAt: print.at }),
    ...(print.beside ? { printBeside: true } : {}),
  };
}

const FEEDS: readonly PlannedWire[] = [
  wire("W1", "G1:-", "X31:1", "31-0", "BK", 50),
  wire("W2", "G1:+", "Q1:1", "30-0", "RD", 50),
  wire("W3", "Q1:2", "SP9:1", "30-1", "RD", 50),
  wire("W4", "SP9:1", "F1:1", "30-2", "RD", 16, [{ y: 200 }]),
  wire("W5", "F1:2", "SP6:1", "30-3", "RD", 16),
  wire("W6", "SP6:1", "F2:1", "30-4", "RD", 4),
  wire("W7", "F2:2", "S1:30", "30-5", "RD", 4, [{ y: 860 }], { on: 0 }),
  wire("W8", "SP6:1", "F4:1", "30-6", "RD", 4, [{ x: 3100 }], { on: 0 }),
  wire("W9", "F4:2", "K2:30", "30-7", ["RD", "BU"], 2.5, [{ y: 1740 }, { x: 2260 }], {
    on: 1,
    at: 0.3,
  }),
  wire("W10", "SP9:1", "K1:30", "30-8", "RD", 35, [{ x: 1240 }], { on: 0, at: 0.4 }),
];

const KEY: readonly PlannedWire[] = [
  wire("W15", "S1:15", "SP7:1", "15-1", ["BK", "RD"], 4, [], { at: 0.42 }),
  wire("W16", "SP7:1", "F3:1", "15-2", ["BK", "RD"], 2.5),
  wire("W17", "F3:2", "SP1:1", "15-3", ["RD", "WH"], 1, [], { at: 0.46 }),
  wire("W18", "SP1:1", "A1:1", "15-4", ["RD", "WH"], 1, [], { at: 0.59 }),
  wire("W40", "SP7:1", "F5:1", "15-8", ["BK", "RD"], 2.5),
  wire("W41", "F5:2", "E1:1", "58-1", ["GY", "BK"], 1, [{ y: 310 }, { x: 2900 }], {
    on: 1,
    at: 0.12,
  }),
];

const STARTER: readonly PlannedWire[] = [
  wire("W11", "S1:50", "K1:86", "50-1", ["BK", "YE"], 2.5, [{ x: 1140 }], { on: 1, at: 0.55 }),
  wire("W12", "K1:85", "X32:1", "31-1", "BN", 1.5, [], { at: 0.68 }),
  wire("W13", "K1:87", "M2:1", "50-2", "BK", 35, [{ y: 1000 }, { x: 1400 }], { on: 2 }),
  wire("W14", "M2:2", "X33:1", "31-9", "BN", 35),
];

const BUTTONS: readonly PlannedWire[] = [
  wire("W19", "SP1:1", "SP8:1", "15-5", ["RD", "WH"], 1, [], BESIDE),
  wire("W20", "SP8:1", "S2:1", "15-6", ["RD", "WH"], 1, [], BESIDE),
  wire("W21", "SP8:1", "S3:1", "15-7", ["RD", "WH"], 1, [{ x: 1600 }], { on: 0 }),
  wire("W22", "S2:2", "SP4:1", "21-1", "YE", 1, [], BESIDE),
  wire("W23", "S3:2", "SP4:1", "21-2", "YE", 1, [{ y: 1270 }], { on: 1 }),
  wire("W24", "SP4:1", "A1:2", "21-3", "YE", 1, [{ x: 1980 }], { on: 0, at: 0.55 }),
];

const PUMP: readonly PlannedWire[] = [
  wire("W25", "A1:3", "SP5:1", "22-1", ["BU", "WH"], 1, [], { at: 0.55 }),
  wire("W26", "SP5:1", "K2:86", "22-2", ["BU", "WH"], 1, [], { at: 0.55 }),
  wire("W27", "SP5:1", "P1:1", "22-3", ["BU", "WH"], 1, [{ x: 2030 }], { on: 1, at: 0.62 }),
  wire("W28", "K2:85", "SP3:1", "31-2", "BN", 1),
  wire("W29", "P1:2", "SP3:1", "31-3", "BN", 1, [{ y: 1560 }], { on: 1 }),
  wire("W30", "SP3:1", "X35:1", "31-4", "BN", 1.5),
  wire("W38", "K2:87", "M1:1", "25-1", ["BK", "BU"], 2.5, [{ y: 1130 }, { x: 2540 }], { on: 2 }),
  wire("W39", "M1:2", "X37:1", "31-11", "BN", 2.5, [], BESIDE),
];

const LEVEL_AND_LIGHT: readonly PlannedWire[] = [
  wire("W31", "A1:4", "SP2:1", "31-5", ["BN", "BK"], 1, [], { at: 0.55 }),
  wire("W32", "S4:2", "SP2:1", "31-6", "BN", 1, [{ y: 940 }, { to: [2400, 940] }], { on: 1 }),
  wire("W33", "E1:2", "SP2:1", "31-7", "BN", 1, [{ y: 1000 }], { on: 1, at: 0.18 }),
  wire("W34", "SP2:1", "X34:1", "31-8", "BN", 2.5, [], { at: 0.66 }),
  wire("W35", "A1:5", "S4:1", "23-1", "GN", 1),
  wire("W36", "A1:6", "P2:1", "24-1", ["GY", "RD"], 1, [], { at: 0.83 }),
  wire("W37", "P2:2", "X36:1", "31-10", "BN", 1),
];

export const WIRES: readonly PlannedWire[] = [
  ...FEEDS,
  ...KEY,
  ...STARTER,
  ...BUTTONS,
  ...PUMP,
  ...LEVEL_AND_LIGHT,
];
