/** Every row of the published table of examples: what a pin sees, and the roles that fit. */
import { describe, expect, test } from "vitest";
import type { PartOf, RoleName } from "../../src/job/index.ts";
import { rolesOf } from "../../src/roles/index.ts";
import { type CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

const roleOf = (circuit: CircuitBuilder, pin: string) => {
  const role = rolesOf(circuit.job, "machine1").find((one) => one.pin === pin);
  if (!role) throw new Error(`no such pin: ${pin}`);
  return role;
};

const fits = (circuit: CircuitBuilder, pin: string): readonly RoleName[] =>
  roleOf(circuit, pin).fits;

/** A module A1 with its own fused feed at 1, its own ground at 2 and the pin in question at 3. */
const fedModule = (printed: string | null = null) =>
  withBattery()
    .module("A1", { "1": null, "2": null, "3": printed })
    .part("fuse", "F1")
    .part("ground", "GND2")
    .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND2:1");

/** A key switch S1 fed from the battery through fuse F9; `S1:15` is live in run and start. */
const withKey = (circuit: CircuitBuilder) =>
  circuit.key("S1").part("fuse", "F9").wire("G1:+ F9:1", "F9:2 S1:30");

/** The same module without a feed of its own. */
const unfedModule = () =>
  withBattery().module("A1", { "2": null, "3": null }).part("ground", "GND2").wire("A1:2 GND2:1");

describe("feeds", () => {
  test("fuse, then battery: supply", () => {
    expect(fits(fedModule(), "A1:1")).toEqual(["supply"]);
  });

  test("fuse, key contact (run), fuse: switched-supply", () => {
    const circuit = withKey(fedModule()).part("fuse", "F2").wire("S1:15 F2:1", "F2:2 A1:3");
    expect(fits(circuit, "A1:3")).toEqual(["switched-supply"]);
  });

  test("the key's spring-return start position: switched-supply or input", () => {
    const circuit = withKey(fedModule()).wire("S1:50 A1:3");
    expect(fits(circuit, "A1:3")).toEqual(["switched-supply", "input"]);
  });

  test("momentary operator contact from a key feed, the module having its own feed: input high", () => {
    const circuit = withKey(fedModule())
      .contact("S2", "operator", { springReturn: true })
      .wire("S1:15 S2:1", "S2:2 A1:3");
    expect(fits(circuit, "A1:3")).toEqual(["input"]);
    expect(roleOf(circuit, "A1:3").circuitSide).toBe("high");
  });

  test("the same contact as the module's only feed: switched-supply or input", () => {
    const circuit = withKey(unfedModule())
      .contact("S2", "operator", { springReturn: true })
      .wire("S1:15 S2:1", "S2:2 A1:3");
    expect(fits(circuit, "A1:3")).toEqual(["switched-supply", "input"]);
  });

  test("seat switch (interlock) in the feed: switched-supply or input", () => {
    const circuit = withKey(fedModule()).contact("S2", "interlock").wire("S1:15 S2:1", "S2:2 A1:3");
    expect(fits(circuit, "A1:3")).toEqual(["switched-supply", "input"]);
  });

  test("what is live only because the module drives a relay is supply all the same", () => {
    const circuit = withBattery()
      .module("A1", { "1": null, "2": null, "3": null, "4": null })
      .part("ground", "GND2")
      .part("fuse", "F1")
      .part("relay", "K1")
      .wire("A1:2 GND2:1", "G1:+ F1:1", "F1:2 A1:1", "F1:2 K1:30", "K1:87 A1:3")
      .wire("A1:4 K1:86", "K1:85 GND2:1");
    expect(fits(circuit, "A1:3")).toEqual(["supply"]);
    expect(fits(circuit, "A1:4")).toEqual(["output"]);
    expect(roleOf(circuit, "A1:4").circuitSide).toBe("high");
  });

  test("a relay that only the key commands: switched-supply", () => {
    const circuit = withKey(fedModule())
      .part("relay", "K1")
      .wire("S1:15 K1:86", "K1:85 GND1:1", "G1:+ K1:30", "K1:87 A1:3");
    expect(fits(circuit, "A1:3")).toEqual(["switched-supply"]);
  });

  test("a relay that an operator's switch commands: input", () => {
    const circuit = withKey(fedModule())
      .contact("S2", "operator")
      .part("relay", "K1")
      .wire("S1:15 S2:1", "S2:2 K1:86", "K1:85 GND1:1", "G1:+ K1:30", "K1:87 A1:3");
    expect(fits(circuit, "A1:3")).toEqual(["input"]);
  });
});

describe("grounds", () => {
  test("splice, ring terminal on the frame: ground", () => {
    const circuit = withBattery()
      .module("A1", { "2": null })
      .part("splice", "SP1")
      .part("ground", "GND2")
      .wire("A1:2 SP1:1 GND2:1");
    expect(fits(circuit, "A1:2")).toEqual(["ground"]);
  });

  test("operator contact to ground: input low", () => {
    const circuit = fedModule().contact("S2", "operator").wire("A1:3 S2:1", "S2:2 GND1:1");
    expect(fits(circuit, "A1:3")).toEqual(["input"]);
    expect(roleOf(circuit, "A1:3").circuitSide).toBe("low");
  });

  test("a contact to ground where the module has no other ground: switched-ground or input", () => {
    const circuit = withBattery()
      .module("A1", { "3": null })
      .contact("S2", "operator")
      .wire("A1:3 S2:1", "S2:2 GND1:1");
    expect(fits(circuit, "A1:3")).toEqual(["switched-ground", "input"]);
  });

  test("hard-wired strap to ground as a coding pin, beside a proper ground: ground or input", () => {
    const circuit = fedModule().part("ground", "GND3").wire("A1:3 GND3:1");
    expect(fits(circuit, "A1:3")).toEqual(["ground", "input"]);
  });
});

describe("loads", () => {
  test("solenoid and lamp in parallel to ground: output high", () => {
    const circuit = fedModule()
      .part("solenoid", "K1")
      .part("lamp", "P1")
      .part("splice", "SP1")
      .wire("A1:3 SP1:1", "SP1:1 K1:1", "SP1:1 P1:1", "K1:2 GND1:1", "P1:2 GND1:1");
    expect(fits(circuit, "A1:3")).toEqual(["output"]);
    expect(roleOf(circuit, "A1:3").circuitSide).toBe("high");
  });

  test("solenoid with flyback diode from a fused key feed: output low", () => {
    const circuit = withKey(fedModule())
      .part("fuse", "F2")
      .part("solenoid", "K1")
      .part("diode", "R1")
      .wire("S1:15 F2:1", "F2:2 K1:1", "K1:2 A1:3", "R1:K K1:1", "R1:A K1:2");
    expect(fits(circuit, "A1:3")).toEqual(["output"]);
    expect(roleOf(circuit, "A1:3").circuitSide).toBe("low");
  });

  test("motor between two pins of the module: output on both, side null, RTN not contradicted", () => {
    const circuit = withBattery()
      .module("A1", { "1": null, "2": null, "3": "RTN", "4": "MOTOR" })
      .part("fuse", "F1")
      .part("motor", "M1")
      .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND1:1", "A1:3 M1:1", "M1:2 A1:4");
    for (const pin of ["A1:3", "A1:4"]) {
      expect(fits(circuit, pin)).toEqual(["output"]);
      expect(roleOf(circuit, pin).circuitSide).toBeNull();
      expect(roleOf(circuit, pin).verdict).toBe("agrees");
    }
  });

  test("a stop switch's wire that also lights a lamp to ground: input or output", () => {
    const circuit = fedModule()
      .contact("S2", "operator")
      .part("lamp", "P1")
      .part("splice", "SP1")
      .wire("F1:2 S2:1", "S2:2 SP1:1", "SP1:1 A1:3", "SP1:1 P1:1", "P1:2 GND1:1");
    expect(fits(circuit, "A1:3")).toEqual(["input", "output"]);
  });

  test("the same line at two pins of the module: whichever of them listens, it is live when on", () => {
    const circuit = withBattery()
      .module("A1", { "1": null, "2": null, "3": "LOW SIDE OUT", "4": "GND" })
      .part("fuse", "F1")
      .part("ground", "GND2")
      .part("relay", "K1")
      .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND2:1");
    withKey(circuit)
      .part("splice", "SP1")
      .part("fuse", "F2")
      .part("fuse", "F3")
      .wire("S1:50 SP1:1", "SP1:1 K1:86", "K1:85 GND2:1")
      .wire("SP1:1 F2:1", "F2:2 A1:3", "SP1:1 F3:1", "F3:2 A1:4");
    for (const pin of ["A1:3", "A1:4"]) {
      expect(fits(circuit, pin)).toEqual(["switched-supply", "input", "output"]);
      expect(roleOf(circuit, pin).circuitSide).toBe("high");
      expect(roleOf(circuit, pin).verdict).toBe("contradicted");
    }
  });

  test("a load's line at two pins, fed by no contact: what the one that listens waits for is not known", () => {
    const circuit = fedModule()
      .module("A2", { "1": null })
      .part("lamp", "P1")
      .part("splice", "SP1")
      .wire("A2:1 SP1:1", "SP1:1 A1:3", "SP1:1 P1:1", "P1:2 GND1:1");
    expect(fits(circuit, "A1:3")).toEqual(["input", "output"]);
    expect(roleOf(circuit, "A1:3").circuitSide).toBeNull();
  });

  test("a dead key bus that reaches ground through every load on it is a feed all the same", () => {
    const circuit = withKey(fedModule())
      .part("lamp", "P1", { watts: 70 })
      .part("heater", "E1")
      .wire("S1:15 P1:1", "P1:2 GND1:1", "S1:15 E1:1", "E1:2 GND1:1", "S1:15 A1:3");
    expect(fits(circuit, "A1:3")).toEqual(["switched-supply"]);
  });
});

describe("senders and sensors", () => {
  test("pressure sender to ground: input low", () => {
    const circuit = fedModule().part("sender", "B1").wire("A1:3 B1:1", "B1:2 GND1:1");
    expect(fits(circuit, "A1:3")).toEqual(["input"]);
    expect(roleOf(circuit, "A1:3").circuitSide).toBe("low");
  });

  const potentiometer = (sources?: { between: [string, string]; volts: number; ohms: number }[]) =>
    withBattery()
      .module(
        "A1",
        { "1": null, "2": null, "3": null, "4": null, "5": null },
        sources ? { sources } : {},
      )
      .part("fuse", "F1")
      .part("potentiometer", "R1")
      .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND1:1", "A1:3 R1:1", "A1:4 R1:W", "A1:5 R1:2");

  test("potentiometer across two pins, wiper on a third: the ends are exchangeable", () => {
    const circuit = potentiometer();
    expect(fits(circuit, "A1:3")).toEqual(["sensor-supply", "sensor-ground"]);
    expect(fits(circuit, "A1:4")).toEqual(["input"]);
    expect(fits(circuit, "A1:5")).toEqual(["sensor-supply", "sensor-ground"]);
  });

  test("... unless the module's sources say which end is which", () => {
    const circuit = potentiometer([{ between: ["5", "3"], volts: 5, ohms: 10 }]);
    expect(fits(circuit, "A1:3")).toEqual(["sensor-ground"]);
    expect(fits(circuit, "A1:5")).toEqual(["sensor-supply"]);
  });

  test("an active sensor's ends fed by the module: sensor-supply, sensor-ground, input", () => {
    const circuit = withBattery()
      .module("A1", { "1": null, "2": null, "3": null, "4": null, "5": null })
      .part("fuse", "F1")
      .part("sensor", "B1", { output: "pnp" })
      .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND1:1", "A1:3 B1:+", "A1:4 B1:S", "A1:5 B1:-");
    expect(fits(circuit, "A1:3")).toEqual(["sensor-supply"]);
    expect(fits(circuit, "A1:4")).toEqual(["input"]);
    expect(fits(circuit, "A1:5")).toEqual(["sensor-ground"]);
  });
});

describe("neighbours and ends", () => {
  test("wire to another module only: signal", () => {
    const circuit = fedModule().module("A2", { "7": null }).wire("A1:3 A2:7");
    expect(fits(circuit, "A1:3")).toEqual(["signal"]);
  });

  test("page end without a partner: all but unused", () => {
    const circuit = fedModule().part("offpage", "X9", { label: "to page 7" }).wire("A1:3 X9:1");
    expect(fits(circuit, "A1:3")).toHaveLength(9);
    expect(fits(circuit, "A1:3")).not.toContain("unused");
  });

  test("page ends with equal labels, but for case and spaces, are one point", () => {
    const circuit = fedModule()
      .part("offpage", "X8", { label: " Line 7" })
      .part("offpage", "X9", { label: "LINE 7 " })
      .wire("A1:3 X8:1", "X9:1 F1:2");
    expect(fits(circuit, "A1:3")).toEqual(["supply"]);
  });

  test("nothing: unused", () => {
    expect(fits(fedModule(), "A1:3")).toEqual(["unused"]);
  });
});

describe("the judged module is taken out, with all that it says to have inside", () => {
  /** Fed over a key at 1, grounded at 2 unless cut, a pressure sender at 3, a button at 4, a sensor at 5. */
  const circuit = (inside: Partial<PartOf<"module">>, grounded = true) => {
    const pins = { "1": null, "2": null, "3": "SIG", "4": "IN", "5": "5V", "6": "OUT" };
    const drawn = withKey(withBattery().module("A1", pins, inside))
      .part("sender", "B1")
      .part("sensor", "B2", { output: "npn" })
      .part("lamp", "P1")
      .part("relay", "K1")
      .contact("S2", "operator")
      .wire("S1:15 A1:1", "A1:3 B1:1", "B1:2 GND1:1", "A1:4 S2:1", "S2:2 GND1:1")
      .wire("A1:5 B2:+", "A1:6 P1:1", "P1:2 GND1:1", "A1:5 K1:86", "K1:85 GND1:1");
    return grounded ? drawn.wire("A1:2 GND1:1") : drawn;
  };
  const power = { supply: ["1"], ground: ["2"] };
  const insides: Readonly<Record<string, Partial<PartOf<"module">>>> = {
    "sources that its feed makes live": {
      power,
      sources: [
        { between: ["5", "2"], volts: 5, ohms: 10 },
        { between: ["3", "2"], volts: 5, ohms: 1000 },
      ],
    },
    "sources that nobody says what feeds": {
      sources: [{ between: ["5", "2"], volts: 5, ohms: 10 }],
    },
    "a pull-up, and what it draws itself": {
      behaviour: {
        paths: [],
        loads: [
          { between: ["1", "4"], ohms: 4700 },
          { between: ["1", "2"], ohms: 600 },
        ],
      },
    },
    "a path to its output": {
      power,
      behaviour: { paths: [{ between: ["1", "6"], input: "4", active: "low", does: "follow" }] },
    },
  };
  const allOf = (drawn: CircuitBuilder) =>
    rolesOf(drawn.job, "machine1").map(({ pin, fits, circuitSide, verdict, because }) => ({
      pin,
      fits,
      circuitSide,
      verdict,
      because,
    }));

  for (const [name, inside] of Object.entries(insides)) {
    test(name, () => {
      expect(allOf(circuit(inside))).toEqual(allOf(circuit({})));
      expect(allOf(circuit(inside, false))).toEqual(allOf(circuit({}, false)));
    });
  }

  test("so that its pins are what hangs on them", () => {
    const whole = circuit(Object.assign({}, ...Object.values(insides)));
    expect(fits(whole, "A1:3")).toEqual(["input"]);
    expect(fits(whole, "A1:4")).toEqual(["input"]);
    expect(fits(whole, "A1:5")).toEqual(["output", "sensor-supply"]);
    expect(allOf(whole).filter(({ verdict }) => verdict === "contradicted")).toEqual([]);
    expect(
      fits(circuit(insides["a pull-up, and what it draws itself"] ?? {}, false), "A1:2"),
    ).toEqual(["unused"]);
  });

  test("what another module says to have inside counts", () => {
    const other = (inside: Partial<PartOf<"module">>) =>
      fedModule()
        .module("A2", { "1": null, "2": null, "3": null }, inside)
        .wire("F1:2 A2:1", "A2:2 GND1:1", "A1:3 A2:3");
    expect(fits(other({}), "A1:3")).toEqual(["signal"]);
    const pulled = other({
      behaviour: { paths: [], loads: [{ between: ["1", "3"], ohms: 4700 }] },
    });
    expect(fits(pulled, "A1:3")).toEqual(["input", "output"]);
  });
});
