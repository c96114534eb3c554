import type { Machine, Reading, Recording, When } from "../../../src/job/index.ts";

const DAY = "2025-09-16T";

/** Isolator open: nothing is live, so ohms are ohms. */
const DEAD: When = { switches: { S1: "off", Q1: "off" }, unplugged: ["A1"] };
const KEY_ON: When = { switches: { S1: "run" }, unplugged: ["A1"] };
const LEVEL_LOW: When = { switches: { S1: "off", Q1: "off", S4: "low" }, unplugged: ["A1"] };

const reading = (
  id: string,
  time: string,
  what: Pick<Reading, "quantity" | "red" | "black" | "value" | "when" | "with" | "note">,
): Reading => ({ id, at: `${DAY}${time}:00`, ...what });

/**
 * What is wrong with it: the crimp where the ground splice SP2 goes on to ring terminal X34 is
 * green, 22 ohms. The panel light draws its current through it, so SP2 stands near 13 V with the
 * key on and the module, which needs 18 V, never wakes.
 */
const READINGS: readonly Reading[] = [
  reading("R1", "08:12", {
    quantity: "volts",
    red: "battery+",
    black: "battery-",
    value: 25.1,
    when: {},
    note: "meter proved on the battery first",
  }),
  reading("R2", "08:24", {
    quantity: "volts",
    red: "X1:1",
    black: "chassis",
    value: 24.6,
    when: KEY_ON,
    with: "test-lamp",
    note: "holds with the test lamp burning bright",
  }),
  reading("R3", "08:27", {
    quantity: "volts",
    red: "X1:2",
    black: "chassis",
    value: 24.7,
    when: { ...KEY_ON, switches: { S1: "run", S2: "pressed" } },
    note: "goes away when the button is let go",
  }),
  reading("R4", "08:33", {
    quantity: "ohms",
    red: "X1:3",
    black: "chassis",
    value: 27.1,
    when: DEAD,
    note: "leads zeroed; pump relay coil and a cold lamp side by side",
  }),
  reading("R5", "08:35", {
    quantity: "ohms",
    red: "X1:6",
    black: "chassis",
    value: 29.6,
    when: DEAD,
  }),
  reading("R6", "08:38", {
    quantity: "ohms",
    red: "X1:4",
    black: "chassis",
    value: 22.4,
    when: DEAD,
    note: "jumps about when the loom is moved",
  }),
  reading("R7", "08:41", {
    quantity: "ohms",
    red: "X1:5",
    black: "chassis",
    value: 22.9,
    when: LEVEL_LOW,
    note: "float held down by hand",
  }),
  reading("R8", "08:43", {
    quantity: "ohms",
    red: "X1:5",
    black: "X1:4",
    value: 0.4,
    when: LEVEL_LOW,
    note: "both branches are good as far as the splice",
  }),
  reading("R9", "08:52", {
    quantity: "drop",
    red: "SP2:1",
    black: "chassis",
    value: 13,
    when: KEY_ON,
    note: "panel light on, only a dull orange",
  }),
  reading("R10", "08:55", {
    quantity: "drop",
    red: "X34:1",
    black: "battery-",
    value: 0.02,
    when: KEY_ON,
    note: "ring terminal to battery: bolt and frame are good",
  }),
  reading("R11", "09:04", {
    quantity: "volts",
    red: "A1:1",
    black: "A1:4",
    value: 11.7,
    when: { switches: { S1: "run" } },
    note: "plugged in, back-probed: the module is starved",
  }),
];

/** What the pump should do: on at one press, off at the next; and the lamp that low water lights. */
const PUMP_AS_DRAWN: Recording = {
  id: "recording1",
  name: "Pump on, water low, pump off",
  steps: [
    { do: "turn", switch: "S1", position: "run" },
    { do: "turn", switch: "S2", position: "pressed" },
    { do: "wait", seconds: 0.5 },
    { do: "release", switch: "S2" },
    { do: "wait", seconds: 2 },
    { do: "turn", switch: "S4", position: "low" },
    { do: "turn", switch: "S3", position: "pressed" },
    { do: "release", switch: "S3" },
    { do: "turn", switch: "S4", position: "full" },
    { do: "turn", switch: "S1", position: "off" },
  ],
};

export const MACHINE: Machine = {
  id: "sweeper14",
  name: "Sweeper 14",
  hours: 4127,
  wires: [
    { cavity: "X1:1", colour: { base: "RD", tracer: "WH" }, number: "15-4", mm2: 1 },
    { cavity: "X1:2", colour: { base: "YE" }, number: "21-3", mm2: 1 },
    { cavity: "X1:3", colour: { base: "BU", tracer: "WH" }, number: "22-1", mm2: 1 },
    { cavity: "X1:4", colour: { base: "BN", tracer: "BK" }, number: "31-5", mm2: 1 },
    { cavity: "X1:5", colour: { base: "GN" }, number: "23-1", mm2: 1 },
    {
      cavity: "X1:6",
      colour: { base: "VT" },
      number: "24-1",
      mm2: 1,
      note: "violet on this machine, grey and red on the sheet",
    },
  ],
  readings: [...READINGS],
  trials: [
    {
      id: "T1",
      when: { switches: { S1: "run", S2: "pressed" } },
      saw: [
        { part: "P1", state: "off" },
        { part: "M1", state: "off" },
        { part: "E1", state: "off" },
      ],
      note: "button pressed several times; no click from K2; panel light only glows",
    },
  ],
  recordings: [PUMP_AS_DRAWN],
};
