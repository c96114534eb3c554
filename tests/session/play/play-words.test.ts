import { expect, test } from "vitest";
import type { LiveState } from "../../../src/circuit/index.ts";
import type { Part, Step } from "../../../src/job/index.ts";
import {
  actsOf,
  ampsWords,
  createSession,
  eventWords,
  leadsWords,
  NOT_OPERATING,
  operablesOf,
  otherPosition,
  partWords,
  pointWords,
  positionOf,
  readoutOf,
  stepWords,
  voltsWords,
} from "../../../src/session/index.ts";
import { STILL } from "../support/live-state.ts";
import { smallJob } from "../support/small-job.ts";

const placed = { sheet: "sheet1", at: [0, 0] as [number, number], turn: 0 };
const button: Extract<Part, { kind: "switch" }> = {
  ...placed,
  id: "S1",
  kind: "switch",
  positions: ["released", "pressed"],
  rest: "released",
  springReturn: true,
  contacts: [{ between: ["1", "2"], closedIn: ["pressed"] }],
  control: "operator",
};

test("a floating point is never told as a voltage", () => {
  expect(pointWords({ state: "floating", volts: null })).toMatch(/ghost voltage/);
  expect(pointWords({ state: "floating", volts: null })).not.toMatch(/\d/);
});

test("what nobody can tell is told as that, without a number", () => {
  expect(pointWords({ state: "unknown", volts: null })).toBe("can’t tell");
  expect(partWords(button, { on: false, share: 0, amps: 0, undecided: true })).toBe("can’t tell");
});

test("volts are shown as a meter shows them, without a negative nothing", () => {
  expect(voltsWords(-0.0001)).toBe("0.00 V");
  expect(voltsWords(0.126)).toBe("0.13 V");
  expect(voltsWords(25.04)).toBe("25.0 V");
  expect(voltsWords(-12.6)).toBe("−12.6 V");
});

test("a current says its size; its way is told by the ends it runs between", () => {
  expect(ampsWords(-0.19352)).toBe("0.194 A");
  const job = smallJob();
  const live: LiveState = {
    ...STILL,
    wires: { W3: { state: "live", volts: 24, amps: -1.5 } },
  };
  const says = readoutOf(job, "machine1", live, "W3")?.says ?? [];
  expect(says).toEqual(["24.0 V against chassis", "1.50 A from P1 to A1"]);
  const idle: LiveState = { ...live, wires: { W3: { state: "live", volts: 24, amps: 0 } } };
  expect(readoutOf(job, "machine1", idle, "W3")?.says[1]).toBe("no current");
});

test("a cavity tells the current of the wire behind it", () => {
  const live: LiveState = {
    ...STILL,
    wires: { W3: { state: "live", volts: 24, amps: 0.5 } },
    cavities: { "X1:2": { state: "live", volts: 24 } },
  };
  expect(readoutOf(smallJob(), "machine1", live, "X1:2")).toEqual({
    title: "X1 cavity 2",
    line: "live",
    says: ["24.0 V against chassis", "0.50 A in its wire"],
  });
  expect(readoutOf(smallJob(), "machine1", live, "X9:9")).toBeNull();
});

test("between two leads a ghost voltage is told only where the drawing says that nothing is there", () => {
  const job = smallJob();
  const [plug] = job.plugs;
  const free = plug?.cavities.find(
    ({ mark }) => !job.links.some((one) => one.cavity === `X1:${mark}`),
  );
  if (!free) throw new Error("every cavity is matched");
  const live: LiveState = {
    ...STILL,
    cavities: {
      "X1:1": { state: "floating", volts: null },
      "X1:2": { state: "unknown", volts: null },
    },
  };
  const between = (red: string | null, volts?: number | null) =>
    leadsWords(job, live, {
      red,
      black: "chassis",
      asks: null,
      ...(volts === undefined ? {} : { volts }),
    });
  expect(between(null)).toBe("Place both leads");
  expect(between("X1:1")).toBe("…");
  expect(between("X1:1", 12)).toBe("12.0 V");
  expect(between("X1:1", null)).toMatch(/ghost voltage/);
  expect(between(`X1:${free.mark}`, null)).toMatch(/^Not known: no pin is matched to/);
  expect(between("X1:2", null)).toMatch(/^Not known: .*nobody has said/);
});

test("steps are told as somebody would tell them", () => {
  const steps: [Step, string][] = [
    [{ do: "turn", switch: "S1", position: "run" }, "S1 to run"],
    [{ do: "release", switch: "S2" }, "Let go of S2"],
    [{ do: "wait", seconds: 2.5 }, "Wait 2.5 s"],
    [{ do: "unplug", id: "A1" }, "Unplug A1"],
    [{ do: "fit", id: "F3" }, "Put F3 back"],
    [{ do: "engine", engine: "cranking" }, "Engine cranking"],
  ];
  for (const [step, words] of steps) expect(stepWords(step)).toBe(words);
});

test("a fuse that blows names what drew the current, and what chatters is named", () => {
  const parts = operablesOf(smallJob(), "machine1").byId;
  expect(
    eventWords({ seconds: 0, what: "blew", part: "F1", amps: 31, drawnBy: ["P1"] }, parts),
  ).toBe("F1 blows at 31.00 A, drawn by P1");
  expect(eventWords({ seconds: 0, what: "oscillates", parts: ["K1"] }, parts)).toMatch(
    /^K1 chatters/,
  );
  expect(eventWords({ seconds: 0, what: "on", part: "P1" }, parts)).toBe("P1 Beacon: lit");
});

test("what can be done with a part depends on how it is", () => {
  const job = smallJob();
  const { byId, fuses, plugged, loads } = operablesOf(job, "machine1");
  expect([fuses, plugged, loads].map((list) => list.map(({ id }) => id))).toEqual([
    ["F1"],
    ["A1"],
    ["P1"],
  ]);
  const labels = (id: string, state: Partial<LiveState["parts"][string]>) =>
    actsOf(byId.get(id) as Part, { on: false, share: 0, amps: 0, ...state }, 24).map(
      ({ label }) => label,
    );
  expect(labels("F1", {})).toEqual(["Pull F1"]);
  expect(labels("F1", { blown: true })).toEqual(["Replace F1", "Pull F1"]);
  expect(labels("F1", { removed: true })).toEqual(["Put F1 back"]);
  expect(labels("A1", { unplugged: true })).toEqual(["Plug in A1"]);
  expect(labels("E1", {})).toEqual([]);
});

test("a switch stands where a hand has just put it, before the circuit has answered", () => {
  const turned = { do: "turn", switch: "S1", position: "pressed" } as const;
  const operate = { ...NOT_OPERATING, played: [{ step: turned, outcome: null }] };
  expect(positionOf(button, NOT_OPERATING)).toBe("released");
  expect(positionOf(button, operate)).toBe("pressed");
  expect(otherPosition(button, operate)).toBe("released");
  expect(otherPosition({ ...button, positions: ["a", "b", "c"] }, operate)).toBeNull();
});

test("a session that has just been opened is not operating", () => {
  expect(createSession("job1", smallJob()).get().operate).toBe(NOT_OPERATING);
});
