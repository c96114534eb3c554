import type { CheckResult, Finding } from "../../../src/check/index.ts";
import { type Job, newJob, type Part, type Wire } from "../../../src/job/index.ts";
import type { Role } from "../../../src/roles/index.ts";

const placed = { sheet: "sheet1", at: [0, 0] as [number, number], turn: 0 };

/** Battery, fuse, lamp and ground around a module A1 of three pins; plug X1 with marks 1 to 4. */
export function smallJob(): Job {
  const parts: Part[] = [
    { ...placed, id: "G1", kind: "battery" },
    { ...placed, id: "F1", kind: "fuse", amps: 10 },
    { ...placed, id: "P1", kind: "lamp", label: "Beacon" },
    { ...placed, id: "E1", kind: "ground" },
    {
      ...placed,
      id: "A1",
      kind: "module",
      label: "Beacon timer",
      pins: [
        { id: "1", printed: "+24V" },
        { id: "2", printed: "OUT" },
        { id: "3", printed: "GND" },
      ],
    },
  ];
  const wires: Wire[] = [
    { id: "W1", from: "G1:+", to: "F1:1", colour: { base: "RD" } },
    { id: "W2", from: "F1:2", to: "A1:1", number: "1412", colour: { base: "RD", tracer: "WH" } },
    { id: "W3", from: "A1:2", to: "P1:1", colour: { base: "BN" } },
    { id: "W4", from: "P1:2", to: "E1:1" },
    { id: "W5", from: "A1:3", to: "E1:1", colour: { base: "BK" } },
  ];
  return {
    ...newJob("Beacon", 24),
    diagram: { sheets: [{ id: "sheet1" }], parts, wires },
    plugs: [
      {
        id: "X1",
        name: "Timer plug",
        side: "wire",
        cavities: ["1", "2", "3", "4"].map((mark, n) => ({
          mark,
          at: [n * 6, 0] as [number, number],
          ...(mark === "4" ? { empty: true } : {}),
        })),
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
        wires: [{ cavity: "X1:2", colour: { base: "BU" } }],
        readings: [
          {
            id: "reading1",
            quantity: "volts",
            red: "X1:1",
            black: "chassis",
            value: 24.6,
            when: {},
          },
        ],
        trials: [],
      },
    ],
  };
}

export const role = (pin: string, more: Partial<Role> = {}): Role => ({
  pin,
  cavity: null,
  printed: null,
  printedRole: null,
  fits: ["unused"],
  circuitRole: "unused",
  circuitSide: null,
  meterRole: null,
  meterFits: [],
  verdict: "unproven",
  meterVerdict: "unproven",
  because: [],
  sentence: "",
  ...more,
});

/** A result as the checker would hand it over, with what a test wants to be in it. */
export function checked(roles: readonly Role[], findings: readonly Finding[] = []): CheckResult {
  const count = (severity: Finding["severity"]) =>
    findings.filter((finding) => finding.severity === severity).length;
  return {
    machine: "machine1",
    roles,
    findings,
    summary: {
      contradictions: count("contradiction"),
      warnings: count("warning"),
      notes: count("note"),
    },
  };
}
