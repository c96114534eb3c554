import { circuitOf } from "../../../src/circuit/index.ts";
import {
  type Job,
  newJob,
  type Part,
  type PinRef,
  readJobText,
  writeJobText,
} from "../../../src/job/index.ts";
import {
  addPart,
  createSession,
  layWire,
  newRecording,
  type Session,
} from "../../../src/session/index.ts";

const placed = { sheet: "s1", turn: 0, unit: 10 };

/** Battery, fuse and lamp in a row to a ground, and two machines of this type. */
export function twoMachines(): Job {
  const parts: Part[] = [
    { ...placed, id: "G1", kind: "battery", at: [0, 0] },
    { ...placed, id: "F1", kind: "fuse", at: [100, 0], amps: 10 },
    { ...placed, id: "P1", kind: "lamp", at: [200, 0] },
    { ...placed, id: "X1", kind: "ground", at: [300, 0] },
    { ...placed, id: "A1", kind: "module", at: [200, 300], pins: [{ id: "1" }, { id: "2" }] },
  ];
  const machine = { wires: [], readings: [], trials: [] };
  return {
    ...newJob("Test", 24),
    diagram: {
      sheets: [{ id: "s1" }],
      parts,
      wires: [
        { id: "W1", from: "G1:+", to: "F1:1" },
        { id: "W2", from: "F1:2", to: "P1:1" },
        { id: "W3", from: "P1:2", to: "X1:1" },
        { id: "W4", from: "G1:-", to: "X1:1" },
      ],
    },
    plugs: [{ id: "X9", side: "wire", cavities: [{ mark: "1", at: [0, 0] }] }],
    links: [{ pin: "A1:1", cavity: "X9:1" }],
    machines: [
      { ...machine, id: "m1", name: "Sweeper 14" },
      { ...machine, id: "m2", name: "Sweeper 15" },
    ],
  };
}

export function recordingOn(machine = "m2", note = "Work lamp fitted"): Session {
  const session = createSession("k", twoMachines());
  session.show({ machine });
  session.show({ recording: newRecording(session.get().job, machine, note) });
  return session;
}

/** Wires one pin to another on the sheet, as one edit. */
export const drawWire = (session: Session, from: PinRef, to: PinRef): void =>
  session.edit("Draw a wire", (draft) => {
    layWire(draft, {
      sheet: "s1",
      from: { on: "pin", ref: from },
      to: { on: "pin", ref: to },
      corners: [],
    });
  });

/** Lays a lamp and wires it from the fuse to the ground, as three edits. */
export function fitLamp(session: Session): string {
  let lamp = "";
  session.edit("Place lamp", (draft) => {
    lamp = addPart(draft, "lamp", "s1", [200, 100]);
  });
  for (const [from, to] of [
    ["F1:2", `${lamp}:1`],
    [`${lamp}:2`, "X1:1"],
  ] as const) {
    drawWire(session, from, to);
  }
  return lamp;
}

export const ids = (list: readonly { id: string }[]) => list.map(({ id }) => id);
export const circuitIds = (session: Session, machine: string) => {
  const { parts, wires } = circuitOf(session.get().job, machine);
  return [...ids(parts), ...ids(wires)];
};
/** The file as others read it; a job that breaks the format would be refused here. */
export const reread = (session: Session): Job => {
  const read = readJobText(writeJobText(session.get().job));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
};
