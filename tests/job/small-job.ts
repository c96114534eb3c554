import type { Job } from "../../src/job/index.ts";

/** A job with one thing of everything, all references good. A new one at every call. */
export const smallJob = (): Job => ({
  format: "pintruth-job",
  version: 1,
  title: "Pump hold",
  systemVoltage: 24,
  diagram: {
    sheets: [{ id: "sheet1", image: { file: "images/scan.png", width: 3, height: 2 } }],
    parts: [
      { id: "G1", kind: "battery", sheet: "sheet1", at: [0, 0], turn: 0 },
      { id: "F1", kind: "fuse", sheet: "sheet1", at: [10, 0], turn: 90, amps: 10 },
      {
        id: "S1",
        kind: "switch",
        sheet: "sheet1",
        at: [20, 0],
        turn: 0,
        positions: ["off", "on"],
        rest: "off",
        contacts: [{ between: ["13", "14"], closedIn: ["on"] }],
        control: "operator",
      },
      {
        id: "A1",
        kind: "module",
        sheet: "sheet1",
        at: [30, 0],
        turn: 0,
        pins: [{ id: "1", printed: "PWR" }, { id: "2", printed: "OUT" }, { id: "3" }],
        power: { supply: ["1"], ground: ["2"] },
      },
      { id: "K1", kind: "relay", sheet: "sheet1", at: [40, 0], turn: 0 },
      { id: "XD1", kind: "ground", sheet: "sheet1", at: [50, 0], turn: 0 },
    ],
    wires: [
      { id: "W1", from: "G1:+", to: "F1:1", colour: { base: "RD" } },
      { id: "W2", from: "F1:2", to: "A1:1", path: [[12, 3]] },
      { id: "W3", from: "A1:2", to: "XD1:1", colour: { base: "BN", tracer: "BK" } },
    ],
  },
  plugs: [
    {
      id: "X1",
      side: "wire",
      cavities: [
        { mark: "1", at: [0, 0] },
        { mark: "2", at: [5, 0] },
        { mark: "3", at: [10, 0], empty: true },
      ],
    },
  ],
  links: [
    { pin: "A1:1", cavity: "X1:1" },
    { pin: "A1:2", cavity: "X1:2" },
  ],
  machines: [
    {
      id: "machine1",
      name: "Sweeper 14",
      wires: [{ cavity: "X1:1", colour: { base: "RD", tracer: "WH" } }],
      readings: [
        {
          id: "reading1",
          quantity: "volts",
          red: "X1:1",
          black: "battery-",
          value: 24.6,
          when: { unplugged: ["A1"], switches: { S1: "on" } },
        },
      ],
      trials: [{ id: "trial1", when: {}, saw: [{ part: "A1", state: "off" }] }],
    },
  ],
});

/** A job as a bag of fields, for tests that break it in ways its type forbids. */
export type Loose = ReturnType<typeof JSON.parse>;

export const looseJob = (): Loose => JSON.parse(JSON.stringify(smallJob()));
