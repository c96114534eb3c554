/** Machines that are wired soundly but unusually: none of their right words may be contradicted. */
import { describe, expect, test } from "vitest";
import { checkJob, createChecker } from "../../src/check/index.ts";
import { ROLE_NAMES } from "../../src/job/index.ts";
import { rolesOf } from "../../src/roles/index.ts";
import { CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

const fed = (printed: string) =>
  withBattery()
    .module("A1", { "1": null, "2": null, "3": printed })
    .part("fuse", "F1")
    .part("ground", "GND2")
    .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND2:1");

const role = (circuit: CircuitBuilder, pin: string) => {
  const found = rolesOf(circuit.job, "machine1").find((one) => one.pin === pin);
  if (!found) throw new Error(`no pin ${pin}`);
  return found;
};
const rules = (circuit: CircuitBuilder) =>
  checkJob(circuit.job, "machine1").findings.map((finding) => finding.rule);

describe("batteries in series", () => {
  const series = (between: "fuse" | "switch") => {
    const circuit = withBattery(12).part("battery", "G2");
    if (between === "fuse") circuit.part("fuse", "F9");
    else circuit.contact("F9", "isolator");
    return circuit
      .wire("G1:+ F9:1", "F9:2 G2:-")
      .module("A1", { "1": "24V", "2": "GND", "3": "SUPPLY" })
      .part("fuse", "F1")
      .wire("G2:+ F1:1", "F1:2 A1:1", "A1:2 GND1:1", "A1:3 G1:+");
  };

  test("joined by a fuse or an isolator are no short, and the middle is live", () => {
    for (const circuit of [series("fuse"), series("switch")]) {
      expect(rules(circuit)).not.toContain("dead-short");
      expect(role(circuit, "A1:1").verdict).toBe("agrees");
      expect(role(circuit, "A1:2").fits).toEqual(["ground"]);
      expect(role(circuit, "A1:3").fits).toEqual(["supply"]);
    }
  });

  test("a relay on a minus that its own contact may raise is followed to an end", () => {
    const circuit = new CircuitBuilder(12)
      .part("battery", "G1")
      .part("battery", "G2")
      .part("relay", "K1")
      .part("relay", "K2")
      .wire("G1:+ G2:+", "K1:85 G1:-", "G1:+ K1:30", "K1:87a K2:86", "G1:- K2:30", "K2:87a K2:86");
    expect(() => rules(circuit)).not.toThrow();
  });

  test("a lamp between two taps has its way back", () => {
    const circuit = series("fuse").part("lamp", "P1").wire("G2:+ P1:1", "P1:2 G1:+");
    expect(rules(circuit)).not.toContain("no-return");
  });
});

describe("a charge line", () => {
  const charging = (printed: string) =>
    fed(printed).part("alternator", "G5").wire("G5:B+ G1:+", "G5:E GND1:1", "G5:D+ A1:3");

  test("may be read or may excite, and is no feed", () => {
    for (const word of ["CHARGE LAMP", "D+", "OUTPUT", "INPUT"]) {
      expect(role(charging(word), "A1:3").fits).toEqual(["input", "output"]);
      expect(role(charging(word), "A1:3").verdict).not.toBe("contradicted");
    }
  });

  test("that pulls in a relay does not make its contact a plain feed", () => {
    const circuit = fed("ENGINE RUN INPUT")
      .part("alternator", "G5")
      .part("relay", "K1")
      .wire("G5:B+ G1:+", "G5:E GND1:1", "G5:D+ K1:86", "K1:85 GND1:1", "F1:2 K1:30")
      .wire("K1:87 A1:3");
    expect(role(circuit, "A1:3").fits).toContain("input");
  });
});

test("what the user says of a page end fits, whatever it is", () => {
  const words = {
    supply: "SUPPLY",
    "switched-supply": "IGN",
    ground: "GND",
    "switched-ground": "SWITCHED GROUND",
    input: "INPUT",
    output: "OUTPUT",
    signal: "CAN H",
  } as const;
  for (const [is, word] of Object.entries(words)) {
    const circuit = fed(word)
      .part("offpage", "X9", { is: is as keyof typeof words })
      .wire("A1:3 X9:1");
    expect(role(circuit, "A1:3").fits, is).toContain(is);
    expect(role(circuit, "A1:3").verdict, is).not.toBe("contradicted");
  }
});

test("an isolator that discharges in its other position is no short", () => {
  const circuit = withBattery()
    .part("switch", "Q1", {
      positions: ["on", "off"],
      control: "isolator",
      contacts: [
        { between: ["1", "2"], closedIn: ["on"] },
        { between: ["2", "3"], closedIn: ["off"] },
      ],
    })
    .part("fuse", "F1")
    .part("lamp", "P1")
    .wire("G1:+ Q1:1", "Q1:2 F1:1", "F1:2 P1:1", "P1:2 GND1:1", "Q1:3 GND1:1");
  expect(rules(circuit)).toEqual([]);
});

test("plus on chassis is no short, and what lies on chassis may be called ground", () => {
  const circuit = new CircuitBuilder(12)
    .part("battery", "G1")
    .part("ground", "GND1")
    .module("A1", { "1": "GND", "2": "BATT NEG" })
    .wire("G1:+ GND1:1", "A1:1 GND1:1", "A1:2 G1:-");
  expect(rules(circuit)).not.toContain("dead-short");
  for (const pin of ["A1:1", "A1:2"]) expect(role(circuit, pin).verdict).not.toBe("contradicted");
});

test("a battery whose own plus is wired to its own minus is a short", () => {
  const circuit = new CircuitBuilder().part("battery", "G1").wire("G1:+ G1:-");
  expect(rules(circuit)).toContain("dead-short");
});

test("a load on a ground that is strapped to no battery has no way back", () => {
  const motor = () =>
    withBattery()
      .part("ground", "GND2", { place: "engine" })
      .part("fuse", "F1")
      .part("motor", "M1")
      .wire("G1:+ F1:1", "F1:2 M1:1", "M1:2 GND2:1");
  expect(rules(motor())).toContain("no-return");
  expect(rules(motor().wire("GND2:1 GND1:1"))).toEqual([]);
});

test("relays in a ring that nothing starts prove no feed", () => {
  const circuit = fed("IN")
    .part("relay", "K1")
    .part("relay", "K2")
    .wire("F1:2 K1:30", "F1:2 K2:30", "K1:87 K2:86", "K2:87 K1:86", "K1:85 GND1:1")
    .wire("K2:85 GND1:1", "K2:87 A1:3");
  expect(role(circuit, "A1:3").fits).toContain("input");
});

test("a dropping resistor in a key feed leaves its word standing", () => {
  const circuit = fed("IGN").key("S1").part("resistor", "R1");
  circuit.wire("F1:2 S1:30", "S1:15 R1:1", "R1:2 A1:3");
  expect(role(circuit, "A1:3").verdict).not.toBe("contradicted");
});

test("relays that lock one another out in dozens are answered and not followed for ever", () => {
  const circuit = fed("IN");
  const count = 12;
  for (let n = 0; n < count; n++) {
    circuit.part("relay", `K${n}`).contact(`S${n}`, "operator").wire(`F1:2 S${n}:1`);
    circuit.wire(`K${n}:85 GND1:1`, `F1:2 K${n}:30`);
  }
  for (let n = 0; n < count; n++) {
    // Held by its own contact or started by hand, and fed from every other one as well.
    circuit.wire(`S${n}:2 K${n}:86`, `K${n}:87 K${n}:86`);
    for (let other = 0; other < count; other++)
      if (other !== n) circuit.wire(`K${other}:87 K${n}:86`);
  }
  circuit.wire("K0:87 A1:3");
  expect(role(circuit, "A1:3").fits).toContain("input");
});

describe("a module that feeds another", () => {
  const feeding = (power: boolean) =>
    fed("12V OUT")
      .part("module", "A2", {
        pins: [
          { id: "1", printed: "PWR" },
          { id: "2", printed: "GND" },
        ],
        ...(power ? { power: { supply: ["1"], ground: ["2"] } } : {}),
      })
      .wire("A1:3 A2:1", "A2:2 GND1:1");

  test("is said to be an output at the one and a feed at the other where that is stated", () => {
    const circuit = feeding(true);
    expect(role(circuit, "A1:3").fits).toEqual(["output", "sensor-supply", "signal"]);
    expect(role(circuit, "A2:1").fits).toEqual(["supply", "switched-supply", "signal"]);
    expect(rules(circuit)).not.toContain("printed-role-contradicted");
  });

  test("keeps its word where a load hangs on the line as well", () => {
    const circuit = feeding(true).part("lamp", "P1").wire("A1:3 P1:1", "P1:2 GND1:1");
    expect(rules(circuit)).not.toContain("printed-role-contradicted");
  });

  test("is a line between modules where nothing is stated", () => {
    expect(role(feeding(false), "A1:3").fits).toEqual(["signal"]);
  });

  test("is looked at again when the other module's feed is stated later", () => {
    const checker = createChecker("machine1");
    const before = feeding(false).job;
    const after = feeding(true).job;
    const fits = (job: typeof before) =>
      checker.check(job).roles.find(({ pin }) => pin === "A1:3")?.fits;
    expect(fits(before)).toEqual(["signal"]);
    const parts = before.diagram.parts.map((part) =>
      part.id === "A2" ? (after.diagram.parts.find(({ id }) => id === "A2") ?? part) : part,
    );
    expect(fits({ ...before, diagram: { ...before.diagram, parts } })).toContain("output");
  });
});

describe("a module that is only being traced", () => {
  const untraced = () =>
    withBattery().module("A1", { "1": "+12V", "2": "NC", "3": null }).part("lamp", "P1");

  test("has no word contradicted before its first wire, and what is free is not told either", () => {
    const circuit = untraced();
    expect(role(circuit, "A1:1")).toMatchObject({ verdict: "undecided", circuitRole: "undecided" });
    expect(role(circuit, "A1:2").verdict).toBe("undecided");
    expect(role(circuit, "A1:3").verdict).toBe("unproven");
    expect(role(circuit, "A1:1").sentence).toContain("No line is traced yet at");
    expect(rules(circuit)).not.toContain("printed-role-contradicted");
  });

  test("from its first wire on, a pin without one is not used, and the words ask for its wire", () => {
    const circuit = untraced().wire("A1:3 P1:1");
    expect(role(circuit, "A1:1")).toMatchObject({ fits: ["unused"], verdict: "contradicted" });
    expect(role(circuit, "A1:1").sentence).toMatch(
      /No wire is drawn at pin A1:1\. .*Trace it, or mark that it goes on/,
    );
    expect(role(circuit, "A1:2").verdict).toBe("agrees");
  });

  test("that says it is half traced: a pin without a wire may be anything, a ground an input", () => {
    const half = (...wires: string[]) =>
      withBattery()
        .module("A1", { "1": "+12V", "2": null, "3": "GND" }, { untraced: true })
        .part("lamp", "P1")
        .part("ground", "GND2")
        .part("ground", "GND3")
        .wire("A1:2 GND2:1", "A1:3 GND3:1", ...wires);
    const circuit = half();
    expect(role(circuit, "A1:1")).toMatchObject({ fits: ROLE_NAMES, verdict: "undecided" });
    expect(role(circuit, "A1:1").sentence).toContain("No line is traced yet at");
    expect(role(circuit, "A1:3")).toMatchObject({ fits: ["ground", "input"] });
    expect(rules(circuit)).not.toContain("printed-role-contradicted");
  });

  test("one of whose grounds may be a coded input, and with every pin wired there is nothing left to trace", () => {
    const wired = (untraced: boolean) =>
      withBattery()
        .module("A1", { "1": "+12V", "2": "GND" }, untraced ? { untraced } : {})
        .part("ground", "GND2")
        .part("fuse", "F1");
    const open = wired(true).wire("A1:2 GND2:1");
    expect(role(open, "A1:2").fits).toEqual(["ground", "input"]);
    const said = wired(false).wire("A1:2 GND2:1");
    expect(role(said, "A1:2").fits).toEqual(["ground"]);
    expect(role(said, "A1:1").fits).toEqual(["unused"]);
    const whole = wired(true).wire("A1:2 GND2:1", "G1:+ F1:1", "F1:2 A1:1");
    expect(role(whole, "A1:1").fits).toEqual(["supply"]);
    expect(role(whole, "A1:2").fits).toEqual(["ground"]);
  });

  test("is looked at again when that wire is drawn, and when it is taken away", () => {
    const checker = createChecker("machine1");
    const verdict = (circuit: CircuitBuilder) =>
      checker.check(circuit.job).roles.find(({ pin }) => pin === "A1:1")?.verdict;
    expect(verdict(untraced())).toBe("undecided");
    expect(verdict(untraced().wire("A1:3 P1:1"))).toBe("contradicted");
    expect(verdict(untraced())).toBe("undecided");
  });
});

test("a pin at an alternator of which nothing else is drawn is fed while the engine runs", () => {
  const circuit = fed("D+").part("alternator", "G3").wire("A1:3 G3:B+");
  expect(role(circuit, "A1:3").fits).toEqual(["switched-supply"]);
});
