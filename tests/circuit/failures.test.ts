import { expect, test } from "vitest";
import {
  elementsOf,
  type FaultMode,
  failuresOf,
  KINDS,
  kindOf,
  TERMINAL_FAILURES,
  WIRE_FAILURES,
} from "../../src/circuit/index.ts";
import type { Part, PartKindName } from "../../src/job/index.ts";

const made = (kind: PartKindName, more: object = {}): Part =>
  ({
    ...kindOf(kind).defaults(24),
    id: "x",
    sheet: "s",
    at: [0, 0],
    turn: 0,
    ...more,
    kind,
  }) as unknown as Part;
const modes = (part: Part): FaultMode[] => failuresOf(part).map(({ mode }) => mode);

/** The modes that the job format names for `isolate`. */
const MODES: readonly FaultMode[] = [
  "open",
  "shorted",
  "high-resistance",
  "stuck-open",
  "stuck-closed",
  "grounded",
  "shorted-to-supply",
  "bridged",
  "leaky",
  "dead",
];

test("each mode of the job format happens to some part, wire or terminal", () => {
  const happening = new Set<FaultMode>([
    ...Object.values(KINDS).flatMap(({ failures }) =>
      failures.map(({ mode }: { mode: FaultMode }) => mode),
    ),
    ...[...WIRE_FAILURES, ...TERMINAL_FAILURES].map(({ mode }) => mode),
  ]);
  expect([...happening].sort()).toEqual([...MODES].sort());
});

test("what has nothing that could fail in a way does not fail in that way", () => {
  expect(modes(made("module", { pins: [{ id: "1" }, { id: "2" }] }))).toEqual(["dead"]);
  const paths = [{ between: ["1", "2"], does: "always" }];
  expect(modes(made("module", { pins: [{ id: "1" }, { id: "2" }], behaviour: { paths } }))).toEqual(
    ["dead", "stuck-open", "stuck-closed"],
  );
});

test("every failure of a part at its defaults befalls an element or a pin that it has", () => {
  for (const kind of Object.keys(KINDS) as PartKindName[]) {
    const part = made(kind, kind === "module" ? { pins: [{ id: "1" }] } : {});
    const laws = new Set(elementsOf(part, 24).map(({ law }) => law.is));
    for (const failure of failuresOf(part)) {
      if (failure.in === "every-pin") continue;
      // a module whose inside nobody has said can be dead all the same
      if (kind === "module") expect(failure.mode).toBe("dead");
      else {
        const befallen = failure.in === "every-element" ? [...laws] : failure.in;
        expect(
          befallen.some((law) => laws.has(law)),
          `${kind} ${failure.mode}`,
        ).toBe(true);
      }
    }
  }
});

test("a relay's contacts stick together, as one armature moves them; a switch's one by one", () => {
  const strikes = (kind: PartKindName, mode: FaultMode) =>
    failuresOf(made(kind)).find((failure) => failure.mode === mode);
  expect(strikes("relay", "stuck-closed")).toMatchObject({
    strikes: "all",
    becomes: "held-pulled",
  });
  expect(strikes("switch", "stuck-closed")).toMatchObject({ strikes: "one", becomes: "joined" });
  expect(strikes("breaker", "stuck-closed")).toMatchObject({ becomes: "joined" });
  expect(strikes("fuse", "stuck-closed")).toBeUndefined();
});

test("a winding's insulation can give way to the frame, a lamp's cannot", () => {
  for (const kind of ["solenoid", "motor", "heater", "horn"] as const) {
    expect(modes(made(kind))).toContain("grounded");
  }
  expect(modes(made("lamp"))).not.toContain("grounded");
});
