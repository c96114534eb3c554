import type { CheckResult } from "../../../../src/check/index.ts";
import { type Job, newJob, type Plug } from "../../../../src/job/index.ts";
import { faceOf, USUAL_ORDER } from "../../../../src/plug/index.ts";
import type { Role } from "../../../../src/roles/index.ts";

/** Two rows of two, drawn from the mating side, 4 mm apart. */
export const fourWay: Plug = {
  id: "X1",
  side: "mating",
  ...faceOf({
    arrangement: { kind: "grid", rows: 2, columns: 2, pitch: [4, 4] },
    marks: { style: "numbers", first: 1 },
    order: USUAL_ORDER,
    housing: "rectangle",
    latch: "top",
    key: null,
  }),
};

/** Pin 1 is brown on the diagram and brown with black on the machine; pin 2 is only on the diagram. */
export function fourWayJob(): Job {
  const job = newJob("Sweeper", 24);
  job.plugs = [structuredClone(fourWay)];
  job.links = [
    { pin: "A1:1", cavity: "X1:1" },
    { pin: "A1:2", cavity: "X1:2" },
  ];
  job.diagram.wires = [
    { id: "w1", from: "A1:1", to: "G1:1", colour: { base: "BN" } },
    { id: "w2", from: "F1:2", to: "A1:2", colour: { base: "RD", tracer: "WH" } },
  ];
  job.machines = [
    {
      id: "m1",
      name: "Sweeper 14",
      wires: [
        { cavity: "X1:1", colour: { base: "BN", tracer: "BK" } },
        { cavity: "X1:2", number: "204" },
      ],
      readings: [],
      trials: [],
    },
  ];
  return job;
}

const role = (pin: string, verdict: Role["verdict"]): Role => ({
  pin,
  cavity: null,
  printed: null,
  printedRole: null,
  fits: ["ground"],
  circuitRole: "ground",
  circuitSide: null,
  meterRole: null,
  meterFits: [],
  verdict,
  meterVerdict: "unproven",
  because: [],
  sentence: "",
});

export const analysisWith = (
  ...verdicts: [pin: string, verdict: Role["verdict"]][]
): CheckResult => ({
  machine: "m1",
  roles: verdicts.map(([pin, verdict]) => role(pin, verdict)),
  findings: [],
  summary: { contradictions: 0, warnings: 0, notes: 0 },
});
