import type { Job, Machine, When } from "../../../src/job/index.ts";
import { tracedOver } from "../drawing/job-diagram.ts";
import type { Skew } from "../drawing/skew.ts";
import { ISO_12098 } from "./iso-12098.ts";
import { SHEET, TRAILER_PLAN } from "./plan.ts";
import { LINKS, PLUGS } from "./plugs.ts";
import { TRAILER_IMAGE } from "./sheet.ts";

/** Straight off the plotter. */
const STRAIGHT: Skew = { degrees: 0, scale: 1, shift: [0, 0], centre: [0, 0] };
const PULLED: When = { unplugged: ["A1"] };

const MACHINE: Machine = {
  id: "trailer3",
  name: "Trailer 3",
  wires: ISO_12098.map((row) => ({
    cavity: `X1:${row.pin}`,
    colour: row.colour,
    number: row.pin,
    mm2: row.mm2,
  })),
  readings: [
    {
      id: "R1",
      quantity: "volts",
      red: "X1:9",
      black: "X1:4",
      value: 25.1,
      when: PULLED,
      at: "2025-10-02T07:40:00",
    },
    {
      id: "R2",
      quantity: "ohms",
      red: "X1:4",
      black: "chassis",
      value: 0.1,
      when: PULLED,
      at: "2025-10-02T07:43:00",
      note: "leads zeroed",
    },
    {
      id: "R3",
      quantity: "ohms",
      red: "X1:1",
      black: "X1:4",
      value: 2.9,
      when: PULLED,
      at: "2025-10-02T07:45:00",
      note: "one cold 21 W lamp",
    },
  ],
  trials: [],
};

/** A trailer with a battery of its own, wired to the published fifteen-pole table. */
export const trailerJob = (): Job => ({
  format: "pintruth-job",
  version: 1,
  title: "Trailer 3 · ISO 12098 connection",
  systemVoltage: 24,
  diagram: {
    sheets: [
      {
        id: SHEET,
        title: "15-pole towing connection",
        image: { file: TRAILER_IMAGE, width: TRAILER_PLAN.width, height: TRAILER_PLAN.height },
      },
    ],
    ...tracedOver(TRAILER_PLAN, STRAIGHT),
  },
  plugs: [...PLUGS],
  links: LINKS,
  machines: [MACHINE],
  words: [{ printed: "Axle lift", role: "output" }],
});
