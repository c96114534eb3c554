import type { Point } from "../../../src/base/index.ts";
import type { Part } from "../../../src/job/index.ts";
import type { Caption, PlannedPart } from "../drawing/plan.ts";
import { A1 } from "./module.ts";

export const SHEET = "sheet7";
/** Pixels of the drawing per symbol unit: 20 at 300 dpi makes a fuse 10 mm long. */
export const UNIT = 20;

/** First pin at the left, at the top, at the bottom. */
const LEVEL = 0;
const DOWN = 90;
const UP = 270;

type Placed = "id" | "kind" | "sheet" | "at" | "turn" | "unit";
type FieldsOf<K extends Part["kind"]> = Omit<Extract<Part, { kind: K }>, Placed>;

function part<K extends Part["kind"]>(
  kind: K,
  id: string,
  at: Point,
  turn: number,
  fields: FieldsOf<K>,
  caption?: Caption,
): PlannedPart {
  const placed = { id, kind, sheet: SHEET, at: [...at], turn, unit: UNIT, ...fields };
  return { part: placed as unknown as Part, ...(caption ? { caption } : {}) };
}

const beside = (dx: number, dy: number, ...lines: string[]): Caption => ({
  lines,
  offset: [dx, dy],
  align: dx < 0 ? "right" : dx > 0 ? "left" : "center",
});

const fuse = (id: string, at: Point, turn: number, amps: number, caption: Caption) =>
  part("fuse", id, at, turn, { amps }, caption);

const ring = (id: string, at: Point) => part("ground", id, at, LEVEL, {}, beside(38, 22, id));

const splice = (id: string, at: Point, dx: number, dy: number) =>
  part("splice", id, at, LEVEL, {}, beside(dx, dy, id));

const button = (id: string, at: Point, where: string) =>
  part(
    "switch",
    id,
    at,
    DOWN,
    {
      label: `pump button, ${where.toLowerCase()}`,
      positions: ["released", "pressed"],
      rest: "released",
      springReturn: true,
      contacts: [{ between: ["1", "2"], closedIn: ["pressed"] }],
      control: "operator",
    },
    beside(64, -22, id, where),
  );

const lamp = (id: string, at: Point, watts: number, label: string, caption: Caption) =>
  part("lamp", id, at, DOWN, { watts, label }, caption);

const FEEDS: readonly PlannedPart[] = [
  part(
    "battery",
    "G1",
    [300, 1780],
    DOWN,
    { volts: 25.2, ohms: 0.02 },
    beside(62, -16, "G1", "24 V"),
  ),
  ring("X31", [300, 1960]),
  part(
    "switch",
    "Q1",
    [300, 1500],
    UP,
    {
      label: "battery isolator",
      positions: ["off", "on"],
      rest: "on",
      contacts: [{ between: ["1", "2"], closedIn: ["on"] }],
      control: "isolator",
    },
    beside(40, -22, "Q1", "BATTERY", "ISOLATOR"),
  ),
  splice("SP9", [300, 1280], -24, -22),
  fuse("F1", [520, 200], LEVEL, 60, beside(0, 52, "F1  60 A")),
  splice("SP6", [760, 200], 0, -34),
  fuse("F2", [760, 420], DOWN, 20, beside(36, -14, "F2", "20 A")),
  part(
    "switch",
    "S1",
    [1000, 860],
    LEVEL,
    {
      label: "key switch",
      positions: ["off", "run", "start"],
      rest: "off",
      springReturn: ["start"],
      contacts: [
        { between: ["30", "15"], closedIn: ["run", "start"] },
        { between: ["30", "50"], closedIn: ["start"] },
      ],
      control: "key",
    },
    { lines: ["S1", "KEY", "OFF-RUN-START"], offset: [-110, 64], align: "center" },
  ),
  splice("SP7", [1300, 840], 0, 38),
  fuse("F3", [1560, 840], LEVEL, 7.5, beside(0, 50, "F3  7,5 A")),
  fuse("F4", [3100, 700], DOWN, 15, beside(36, -14, "F4", "15 A")),
  fuse("F5", [1300, 600], UP, 5, beside(36, -14, "F5", "5 A")),
];

const STARTER: readonly PlannedPart[] = [
  part("relay", "K1", [1200, 1140], LEVEL, { coilOhms: 96 }, beside(-96, -14, "K1", "START")),
  ring("X32", [1140, 1440]),
  part("motor", "M2", [1400, 1260], DOWN, { ohms: 0.08 }, beside(52, -14, "M2", "STARTER")),
  ring("X33", [1400, 1440]),
];

const CONTROL: readonly PlannedPart[] = [
  splice("SP1", [1800, 840], 24, -22),
  splice("SP8", [1800, 960], 24, 0),
  button("S2", [1800, 1110], "CAB"),
  button("S3", [1600, 1110], "REAR"),
  splice("SP4", [1800, 1270], 0, 38),
  { part: A1 },
];

const PUMP: readonly PlannedPart[] = [
  splice("SP5", [2160, 920], 24, -20),
  part("relay", "K2", [2220, 1280], LEVEL, { coilOhms: 320 }, beside(-96, -14, "K2", "PUMP")),
  lamp("P1", [2030, 1440], 2, "pump-on tell-tale", beside(-48, -14, "P1", "PUMP ON")),
  splice("SP3", [2160, 1560], 22, -22),
  part("ground", "X35", [2160, 1680], LEVEL, {}, beside(-38, 22, "X35")),
  part(
    "motor",
    "M1",
    [2540, 1500],
    DOWN,
    { ohms: 2.4, label: "water pump" },
    beside(52, -30, "M1", "WATER", "PUMP"),
  ),
  ring("X37", [2540, 1640]),
];

const LEVEL_AND_LIGHT: readonly PlannedPart[] = [
  part(
    "switch",
    "S4",
    [2520, 840],
    DOWN,
    {
      label: "water level switch, closes when low",
      positions: ["full", "low"],
      rest: "full",
      contacts: [{ between: ["1", "2"], closedIn: ["low"] }],
      control: "level",
    },
    beside(72, -22, "S4", "LEVEL"),
  ),
  splice("SP2", [2340, 1000], -22, 28),
  ring("X34", [2340, 1600]),
  lamp("P2", [2700, 1240], 2, "low-water tell-tale", beside(48, -14, "P2", "LOW WATER")),
  ring("X36", [2700, 1410]),
  lamp("E1", [2900, 700], 21, "control panel light", beside(48, -14, "E1", "PANEL", "LIGHT")),
];

export const PARTS: readonly PlannedPart[] = [
  ...FEEDS,
  ...STARTER,
  ...CONTROL,
  ...PUMP,
  ...LEVEL_AND_LIGHT,
];
