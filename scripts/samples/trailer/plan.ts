import type { Point } from "../../../src/base/index.ts";
import type { Part, PartOf } from "../../../src/job/index.ts";
import type { Caption, Plan, PlannedPart, PlannedWire } from "../drawing/plan.ts";
import type { Leg } from "../drawing/route.ts";
import { ISO_12098, type TrailerPin } from "./iso-12098.ts";

export const SHEET = "sheet1";
const UNIT = 20;
const FIRST_ROW = 290;
const ROW = 120;
/** Columns of the drawing, pixels: right edge of the towing side, loads, their grounds, the feed down to A2. */
const EDGE = 860;
const LOADS = 1280;
const GROUNDS = 1500;
const FEED = 1760;

const RIGHT_EDGE = 270;
const rowOf = (pin: number): number => FIRST_ROW + (pin - 1) * ROW;

type Placed = "id" | "kind" | "sheet" | "at" | "turn" | "unit";

function part<K extends Part["kind"]>(
  kind: K,
  id: string,
  at: Point,
  turn: number,
  fields: Omit<PartOf<K>, Placed>,
  caption?: Caption,
): PlannedPart {
  const placed = { id, kind, sheet: SHEET, at: [...at], turn, unit: UNIT, ...fields };
  return { part: placed as unknown as Part, ...(caption ? { caption } : {}) };
}

const after = (id: string, dx = 68): Caption => ({ lines: [id], offset: [dx, 0], align: "left" });
const above = (words: string): Caption => ({ lines: [words], offset: [0, -58], align: "center" });

const MODULE_HEIGHT = 15 * ROW + 60;

/** What the trailer's plug goes into: everything is looked at with it pulled. */
export const TOWING_SIDE: PartOf<"module"> = {
  id: "A1",
  kind: "module",
  sheet: SHEET,
  at: [EDGE - 350, FIRST_ROW + 7 * ROW],
  turn: 0,
  unit: UNIT,
  label: "towing vehicle",
  size: [700, MODULE_HEIGHT],
  pins: ISO_12098.map((row, index) => ({
    id: row.pin,
    printed: row.function,
    at: [350, (index - 7) * ROW],
  })),
};

export const BRAKE_UNIT: PartOf<"module"> = {
  id: "A2",
  kind: "module",
  sheet: SHEET,
  at: [2300, 1790],
  turn: 0,
  unit: UNIT,
  label: "trailer brake unit",
  size: [560, 460],
  pins: [
    { id: "1", printed: "PWR", at: [-280, rowOf(12) - 1790] },
    { id: "2", printed: "GND", at: [280, 0] },
    { id: "3", printed: "CAN H", at: [-280, rowOf(14) - 1790] },
    { id: "4", printed: "CAN L", at: [-280, rowOf(15) - 1790] },
  ],
  power: { supply: ["1"], ground: ["2"], minVolts: 16 },
};

const lamp = (pin: number, watts: number) =>
  part("lamp", `P${pin}`, [LOADS, rowOf(pin)], 0, { watts }, above(`P${pin}  ${watts} W`));

const ground = (pin: number) =>
  part("ground", `X${20 + pin}`, [GROUNDS, rowOf(pin)], RIGHT_EDGE, {}, after(`X${20 + pin}`));

const contact = (
  pin: number,
  label: string,
  positions: [string, string],
  control: "limit" | "pressure",
) =>
  part(
    "switch",
    `S${pin}`,
    [LOADS, rowOf(pin)],
    0,
    {
      label,
      positions,
      rest: positions[0],
      contacts: [{ between: ["1", "2"], closedIn: [positions[1]] }],
      control,
    },
    { lines: [`S${pin}`], offset: [-52, -38], align: "right" },
  );

const LAMPS = [
  [1, 21],
  [2, 21],
  [3, 21],
  [5, 10],
  [6, 10],
  [7, 42],
  [8, 42],
] as const;

const parts: readonly PlannedPart[] = [
  { part: TOWING_SIDE },
  ...LAMPS.map(([pin, watts]) => lamp(pin, watts)),
  part("fuse", "F1", [LOADS, rowOf(9)], 0, { amps: 20 }, above("F1  20 A")),
  part(
    "splice",
    "SP1",
    [FEED, rowOf(9)],
    0,
    {},
    { lines: ["SP1"], offset: [0, -34], align: "center" },
  ),
  part(
    "battery",
    "G1",
    [2080, rowOf(9)],
    0,
    { volts: 25.2, ohms: 0.02 },
    above("G1  TAIL-LIFT BATTERY"),
  ),
  part("ground", "X29", [2340, rowOf(9)], RIGHT_EDGE, {}, after("X29")),
  part(
    "fuse",
    "F2",
    [FEED, rowOf(11)],
    90,
    { amps: 10 },
    {
      lines: ["F2", "10 A"],
      offset: [36, -14],
      align: "left",
    },
  ),
  contact(10, "brake lining worn", ["good", "worn"], "limit"),
  contact(11, "spring-brake pressure low", ["charged", "low"], "pressure"),
  part(
    "solenoid",
    "Y12",
    [LOADS, rowOf(12)],
    0,
    { ohms: 28.8, label: "axle lift valve" },
    above("Y12"),
  ),
  ...[1, 2, 3, 4, 5, 6, 7, 8, 10, 11, 12, 13].map(ground),
  { part: BRAKE_UNIT },
  part("ground", "X40", [2800, 1790], RIGHT_EDGE, {}, after("X40")),
];

function wire(
  id: string,
  from: string,
  to: string,
  number: string,
  { colour, mm2 }: Pick<TrailerPin, "colour" | "mm2">,
  legs: readonly Leg[] = [],
): PlannedWire {
  return { id, from, to, number, colour, mm2, legs };
}

/** First part that a contact's wire comes to, and its far pin where a ground follows. */
const FIRST_STOP: Readonly<Record<string, readonly [string, string | null]>> = {
  "1": ["P1:1", "P1:2"],
  "2": ["P2:1", "P2:2"],
  "3": ["P3:1", "P3:2"],
  "4": ["X24:1", null],
  "5": ["P5:1", "P5:2"],
  "6": ["P6:1", "P6:2"],
  "7": ["P7:1", "P7:2"],
  "8": ["P8:1", "P8:2"],
  "9": ["F1:1", null],
  "10": ["S10:1", "S10:2"],
  "11": ["S11:1", "S11:2"],
  "12": ["Y12:1", "Y12:2"],
  "13": ["X33:1", null],
  "14": ["A2:3", null],
  "15": ["A2:4", null],
};

const WHITE = { colour: { base: "WH" }, mm2: 2.5 } as const;
const ORANGE = { colour: { base: "OG" }, mm2: 2.5 } as const;

const wires: readonly PlannedWire[] = [
  ...ISO_12098.flatMap((row): PlannedWire[] => {
    const [stop, beyond] = FIRST_STOP[row.pin] ?? ["", null];
    const number = Number(row.pin);
    return [
      // printed near the plug, where one looks for it
      {
        ...wire(`W${row.pin}`, `A1:${row.pin}`, stop, row.pin, row),
        printAt: 200 / (number > 13 ? 1160 : 360),
      },
      ...(beyond
        ? [wire(`W${20 + number}`, beyond, `X${20 + number}:1`, `31-${row.pin}`, WHITE)]
        : []),
    ];
  }),
  wire("W40", "F1:2", "SP1:1", "9-1", ORANGE),
  wire("W41", "SP1:1", "G1:+", "9-2", ORANGE),
  wire("W42", "G1:-", "X29:1", "31-9", WHITE),
  wire("W43", "SP1:1", "F2:1", "9-3", ORANGE),
  wire("W44", "F2:2", "A2:1", "9-4", ORANGE, [{ y: rowOf(12) }]),
  wire("W45", "A2:2", "X40:1", "31-14", WHITE),
];

/** A4 across at 300 dpi. */
export const TRAILER_PLAN: Plan = { width: 3508, height: 2480, parts, wires };
