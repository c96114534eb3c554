import { existsSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { solveCircuit } from "../../src/circuit/index.ts";
import { predict } from "../../src/readings/index.ts";
import { CircuitBuilder } from "../support/circuit-builder.ts";

/**
 * Worked problems that need only sources and resistors: T. R. Kuphaldt, Lessons in Electric
 * Circuits, vol. 1, and OpenStax University Physics 2 (numbers only). Each problem names its page.
 */
interface Problem {
  readonly name: string;
  readonly source: string;
  readonly net_type_name_plus_minus_value:
    | readonly (readonly [type: string, name: string, plus: string, minus: string, value: number])[]
    | null;
  readonly answers: Readonly<Record<string, number>>;
}

const FILE = new URL("../../../shared/reference/dc-problems.json", import.meta.url);
const problems: Problem[] = existsSync(FILE) ? JSON.parse(readFileSync(FILE, "utf8")) : [];
if (problems.length === 0) {
  console.warn("SKIPPED: the worked DC problems are not beside this checkout");
}

function drawn(net: NonNullable<Problem["net_type_name_plus_minus_value"]>): CircuitBuilder {
  const builder = new CircuitBuilder(24);
  const nodes = new Set(net.flatMap(([, , plus, minus]) => [plus, minus]));
  for (const node of nodes) builder.part("splice", `N${node}`);
  for (const [type, name, plus, minus, value] of net) {
    if (type === "v") {
      builder
        .part("battery", name, { volts: value, ohms: 0 })
        .wire(`N${plus}:1 ${name}:+`, `${name}:- N${minus}:1`);
    } else {
      builder
        .part("resistor", name, { ohms: value })
        .wire(`N${plus}:1 ${name}:1`, `${name}:2 N${minus}:1`);
    }
  }
  return builder;
}

/** The books print three to five digits. */
const near = (wanted: number) => Math.abs(wanted) * 2e-3;

for (const { name, source, net_type_name_plus_minus_value: net, answers } of problems) {
  if (net === null) continue;
  test(`${name}: as worked in ${source.slice(0, 60)}`, () => {
    const solved = solveCircuit(drawn(net).job, null, {});
    for (const [what, wanted] of Object.entries(answers)) {
      const [, quantity, inside = ""] = /^([VI])\((.+)\)$/.exec(what) ?? [];
      let found: number | null | undefined;
      if (quantity === "V") {
        const [red, black] = inside.split(",");
        found = solved.volts(`N${red}:1`, `N${black}:1`);
      } else {
        found = solved.flows.find((flow) => flow.part === inside)?.amps;
      }
      expect(found, what).toBeTypeOf("number");
      // the books give magnitudes of currents
      expect(
        Math.abs((quantity === "I" ? Math.abs(found ?? 0) : (found ?? 0)) - wanted),
      ).toBeLessThan(near(wanted));
    }
  });
}

test.skipIf(problems.length === 0)("a meter of 10 MΩ shows what the book's meter shows", () => {
  // Kuphaldt, DC, "Voltmeter impact": 24 V over two 250 MΩ reads 0.8889 V across one of them
  const problem = problems.find((one) => one.name === "voltmeter loading");
  const net = problem?.net_type_name_plus_minus_value?.filter(([, name]) => name !== "METER");
  expect(net).toHaveLength(3);
  const { job } = drawn(net ?? []);
  job.machines = [{ id: "m", name: "m", wires: [], readings: [], trials: [] }];
  const found = predict(job, "m", { quantity: "volts", red: "N2:1", black: "N0:1", when: {} });
  expect(found.predicted).toBeCloseTo(problem?.answers["V(2,0)"] ?? 0, 3);
});

test("a silicon diode takes 0.7 of 6 volts forward, and all of them reversed", () => {
  // Kuphaldt, Semi, fig. 03249: diode 0.7 V and lamp 5.3 V forward; 6.0 V and 0.0 V reversed
  const circuit = (anode: "A" | "K") =>
    solveCircuit(
      new CircuitBuilder(6)
        .part("battery", "G1", { volts: 6, ohms: 0 })
        .part("diode", "R1")
        .part("lamp", "P1", { watts: 3 })
        .wire(`G1:+ R1:${anode}`, `R1:${anode === "A" ? "K" : "A"} P1:1`, "P1:2 G1:-").job,
      null,
      {},
    );
  const forward = circuit("A");
  expect(forward.volts("R1:A", "R1:K")).toBeCloseTo(0.7, 2);
  expect(forward.volts("P1:1", "P1:2")).toBeCloseTo(5.3, 2);
  const reversed = circuit("K");
  expect(reversed.volts("R1:K", "R1:A")).toBeCloseTo(6, 9);
  expect(reversed.volts("P1:1", "P1:2")).toBe(0);
});
