import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { CheckResult, Finding } from "../../src/check/index.ts";
import type { Job, Machine, Reading, RoleName } from "../../src/job/index.ts";
import { type Face, faceOf, USUAL_ORDER } from "../../src/plug/index.ts";
import type { Role } from "../../src/roles/index.ts";
import { SHEET_FONT_FILES, type SheetFonts } from "../../src/sheet/index.ts";
import { parseColour } from "../../src/standards/index.ts";

/** The fonts as the command line gets them: from the installed package. */
export function installedFonts(): SheetFonts {
  const require = createRequire(import.meta.url);
  const read = (path: string) => new Uint8Array(readFileSync(require.resolve(path)));
  return { regular: read(SHEET_FONT_FILES.regular), bold: read(SHEET_FONT_FILES.bold) };
}

const reading = (id: string, red: string, value: Reading["value"], more = {}): Reading => ({
  id,
  quantity: "volts",
  red,
  black: "chassis",
  value,
  when: { switches: { S1: "RUN" }, unplugged: ["A1"] },
  at: "2025-11-14T10:42:00Z",
  ...more,
});

type Pin = readonly [mark: string, printed: string, colour: string, wire: string];

const PINS: readonly Pin[] = [
  ["1", "BAT", "RD", "101"],
  ["2", "IGN", "BN/BK", "102"],
  ["3", "PUMP SW", "GNWH", "103"],
  ["4", "OUT", "BK", "104"],
  ["5", "GND", "YE", "105"],
  ["6", "LAMP", "WHBU", "106"],
];

const place = { sheet: "sheet1", at: [0, 0] as [number, number], turn: 0 };

/** Numbered cavities in rows, 7 mm apart, with a latch above. */
const gridFace = (rows: number, columns: number): Face =>
  faceOf({
    arrangement: { kind: "grid", rows, columns, pitch: [7, 7] },
    marks: { style: "numbers", first: 1 },
    order: USUAL_ORDER,
    housing: "rectangle",
    latch: "top",
    key: null,
  });

/** An eight-way plug: six cavities in use, two words exchanged, one colour and two readings of its own. */
export function eightWayJob(): Job {
  const face = gridFace(2, 4);
  const cavities = face.cavities.map((cavity) => {
    if (cavity.mark === "7") return { ...cavity, empty: true };
    return cavity.mark === "8" ? { ...cavity, blocked: true } : cavity;
  });
  const machine: Machine = {
    id: "M1",
    name: "Sweeper 14",
    serial: "SW-0014",
    hours: 5120,
    wires: [{ cavity: "X1:5", colour: { base: "YE", tracer: "RD" }, number: "105" }],
    readings: [reading("R1", "X1:1", 25.4), reading("R2", "X1:4", 7.9, { at: undefined })],
    trials: [],
  };
  return {
    format: "pintruth-job",
    version: 1,
    title: "Water pump does not hold",
    systemVoltage: 24,
    diagram: {
      sheets: [{ id: "sheet1" }],
      parts: [
        {
          ...place,
          kind: "module",
          id: "A1",
          label: "Water pump hold",
          pins: PINS.map(([id, printed]) => ({ id, printed })),
        },
        { ...place, kind: "fuse", id: "F3", amps: 10 },
        { ...place, kind: "ground", id: "G1", label: "frame, left rail" },
        { ...place, kind: "splice", id: "SP2" },
      ],
      wires: PINS.map(([mark, , colour, number]) => ({
        id: `W${mark}`,
        from: `A1:${mark}`,
        to: "SP2:1",
        number,
        colour: parseColour(colour) ?? undefined,
        mm2: 1.5,
      })),
    },
    plugs: [{ id: "X1", name: "pump module", side: "wire", ...face, cavities }],
    links: PINS.map(([mark]) => ({ pin: `A1:${mark}`, cavity: `X1:${mark}` })),
    machines: [machine],
  };
}

type Said = readonly [mark: string, fits: RoleName[], side: Role["circuitSide"], path: string[]];

const SAID: readonly Said[] = [
  ["1", ["supply"], null, ["W1", "F3"]],
  ["2", ["switched-supply"], null, ["W2", "F3"]],
  ["3", ["input"], "high", ["W3"]],
  ["4", ["ground"], null, ["W4", "SP2", "G1"]],
  ["5", ["output"], "low", ["W5"]],
  ["6", ["input", "output"], null, ["W6"]],
];

/** What the check says of that plug, written by hand: nothing here is inferred. */
export function eightWayCheck(): CheckResult {
  const wrong = ["4", "5"];
  const roles = SAID.map(([mark, fits, circuitSide, because]): Role => {
    const printed = PINS.find(([id]) => id === mark)?.[1] ?? null;
    return {
      pin: `A1:${mark}`,
      cavity: `X1:${mark}`,
      printed,
      printedRole: null,
      fits,
      circuitRole: fits.length === 1 ? (fits[0] ?? "undecided") : "undecided",
      circuitSide,
      meterRole: mark === "1" ? "supply" : null,
      meterFits: mark === "1" ? ["supply"] : [],
      verdict: wrong.includes(mark) ? "contradicted" : fits.length > 1 ? "undecided" : "agrees",
      meterVerdict: mark === "1" ? "agrees" : "unproven",
      because,
      sentence: "",
    };
  });
  const findings: Finding[] = [
    {
      rule: "printed-role-contradicted",
      severity: "contradiction",
      subjects: ["A1:4", "X1:4"],
      message: "printed OUT, but the circuit makes it a ground: through splice SP2 to G1.",
    },
    {
      rule: "printed-role-contradicted",
      severity: "contradiction",
      subjects: ["A1:5", "X1:5"],
      message: "printed GND, but the circuit makes it an output that grounds Y1.",
    },
    {
      rule: "colour-differs",
      severity: "warning",
      subjects: ["X1:5"],
      message: "the wire is YERD on this machine and YE on the diagram.",
    },
    {
      rule: "no-supply",
      severity: "warning",
      subjects: ["E9"],
      message: "about something that is not on this plug.",
    },
  ];
  return { machine: "M1", roles, findings, summary: { contradictions: 2, warnings: 2, notes: 0 } };
}

/** A plug of many cavities in rows of fifteen, each tied, with long words, and a check to match. */
export function wideJob(count: number): { job: Job; check: CheckResult } {
  const small = eightWayJob();
  const marks = Array.from({ length: count }, (_, index) => String(index + 1));
  const base = eightWayCheck();
  const roles = marks.map((mark, index): Role => {
    const like = base.roles[index % base.roles.length];
    if (!like) throw new Error("no role to copy");
    return { ...like, pin: `A1:${mark}`, cavity: `X1:${mark}`, printed: `OUT ${mark}` };
  });
  const module = small.diagram.parts.find((part) => part.kind === "module");
  if (module?.kind !== "module") throw new Error("no module");
  const job: Job = {
    ...small,
    diagram: {
      ...small.diagram,
      parts: [
        { ...module, pins: marks.map((id) => ({ id, printed: `OUT ${id}` })) },
        ...small.diagram.parts.filter((part) => part.kind !== "module"),
      ],
      wires: marks.map((mark) => ({
        id: `W${mark}`,
        from: `A1:${mark}`,
        to: "SP2:1",
        number: `${100 + Number(mark)}`,
        colour: { base: "GN", tracer: "YE" },
      })),
    },
    plugs: [{ id: "X1", side: "wire", ...gridFace(Math.ceil(count / 15), 15) }],
    links: marks.map((mark) => ({ pin: `A1:${mark}`, cavity: `X1:${mark}` })),
  };
  return { job, check: { ...base, roles } };
}
