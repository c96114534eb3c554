import { expect, test } from "vitest";
import { CircuitBuilder, withBattery } from "../../support/circuit-builder.ts";
import { isOn, playOf, plug, press, remove, run, told, turn, unplug } from "./hands-on.ts";

/**
 * A module that drives a lamp from its own feed, and a second lamp from the battery that returns
 * through a module's own ground.
 */
const shared = () =>
  withBattery()
    .part("ground", "GND2")
    .contact("S1", "operator")
    .part("inline", "X9", { pins: [{ id: "1" }] })
    .part("splice", "X1")
    .part("lamp", "P1", { watts: 21 })
    .part("lamp", "P2", { watts: 21 })
    .module(
      "A1",
      { "1": "BATT", "2": "GND", "3": "IN", "4": "OUT" },
      {
        power: { supply: ["1"], ground: ["2"] },
        behaviour: {
          paths: [{ between: ["1", "4"], input: "3", active: "high", does: "follow" }],
          loads: [{ between: ["1", "2"], ohms: 20 }],
        },
      },
    )
    .wire("G1:+ A1:1", "A1:2 X1:1", "X1:1 X9:1", "X9:1 GND2:1")
    .wire("G1:+ S1:1", "S1:2 A1:3", "A1:4 P1:1", "P1:2 GND1:1")
    .wire("S1:2 P2:1", "P2:2 X1:1");

test("a module with a lifted ground is dead", () => {
  const play = playOf(shared());
  expect(isOn(run(play, press("S1")), "A1", "P1", "P2")).toEqual([true, true, true]);
  const lifted = run(play, unplug("X9"));
  expect(isOn(lifted, "A1", "P1", "P2")).toEqual([false, false, false]);
  expect(told(lifted.events).slice(-4)).toEqual([
    "0 unpowered A1",
    "0 path-opened A1 1-4",
    "0 off P1",
    "0 off P2",
  ]);
  expect(isOn(run(play, plug("X9")), "A1", "P1", "P2")).toEqual([true, true, true]);
});

test("a lifted ground lets current find its way back through a lamp, which glows", () => {
  const play = playOf(shared());
  // S1 open: from the battery through the module's own load, its lifted ground and P2 to S1's wire
  run(play, unplug("X9"));
  expect(play.state().pins["A1:2"]?.state).toBe("live-through-load");
  // give S1's wire a way to ground: a lamp of the same size
  const bypassed = shared().part("heater", "E1", { ohms: 30 }).wire("S1:2 E1:1", "E1:2 GND1:1");
  const sneak = playOf(bypassed);
  expect(sneak.state().parts.P2?.share).toBe(0);
  const state = run(sneak, unplug("X9"));
  // 25.2 V over the module's 20 Ω, the lamp, which stays cool, and the heater's 30 Ω
  const { amps, share } = state.parts.P2 ?? { amps: 0, share: 0 };
  expect(amps).toBeCloseTo((25.2 - share * 24) / (20 + 30 + 0.01), 6);
  expect(share).toBeGreaterThan(0.02);
  expect(share).toBeLessThan(0.25);
  expect(isOn(state, "A1", "P2")).toEqual([false, false]);
  expect(state.pins["A1:2"]?.state).toBe("between");
  // it goes into P2 at its ground end
  expect(state.wires.W11?.amps).toBeCloseTo(-amps, 9);
});

test("live, ground, through a load, between and floating are told apart", () => {
  const play = playOf(
    withBattery()
      .part("fuse", "F1")
      .contact("S1", "operator")
      .contact("S2", "operator")
      .part("lamp", "P1")
      .part("lamp", "P2")
      .part("lamp", "P3")
      .part("splice", "X1")
      .part("resistor", "R1", { ohms: 100 })
      .wire("G1:+ F1:1", "F1:2 S1:1", "S1:2 P1:1", "P1:2 P2:1", "P2:2 GND1:1")
      .wire("F1:2 P3:1", "P3:2 S2:1", "S2:2 GND1:1", "X1:1 R1:1"),
  );
  const { pins } = play.state();
  const states = (...refs: readonly string[]) => refs.map((ref) => play.state().pins[ref]?.state);
  expect(states("F1:2", "S1:1", "P2:2", "GND1:1")).toEqual(["live", "live", "ground", "ground"]);
  expect(states("S1:2", "P1:2", "S2:1", "R1:1", "R1:2")).toEqual([
    "ground-through-load",
    "ground-through-load",
    "live-through-load",
    "floating",
    "floating",
  ]);
  expect(pins["S2:1"]?.volts).toBeCloseTo(25.2, 6);
  expect(pins["P1:2"]?.volts).toBe(0);
  expect(pins["R1:1"]?.volts).toBeNull();
  run(play, press("S1"), press("S2"));
  expect(states("S1:2", "P1:2", "S2:1")).toEqual(["live", "between", "ground"]);
  expect(play.state().pins["P1:2"]?.volts).toBeCloseTo(12.6, 1);
  expect(play.volts("P1:1", "P1:2")).toBeCloseTo(12.6, 1);
  expect(play.volts("X1:1", "chassis")).toBeNull();
});

test("the way of the current is along each wire, and wires side by side share it", () => {
  const play = playOf(
    withBattery()
      .part("splice", "X1")
      .part("splice", "X2")
      .part("resistor", "R1", { ohms: 10 })
      .part("resistor", "R2", { ohms: 20 })
      .wire("G1:+ X1:1", "X1:1 X2:1", "X2:1 X1:1", "X2:1 R1:1", "R2:1 X2:1")
      .wire("R1:2 GND1:1", "R2:2 GND1:1"),
  );
  const amps = (id: string) => play.state().wires[id]?.amps ?? Number.NaN;
  expect(amps("W2")).toBeCloseTo(25.2 / 10 + 25.2 / 20, 1);
  expect(amps("W3")).toBeCloseTo(amps("W2") / 2, 9);
  expect(amps("W4")).toBeCloseTo(-amps("W2") / 2, 9);
  expect(amps("W5")).toBeCloseTo(play.state().parts.R1?.amps ?? 0, 9);
  expect(amps("W6")).toBeCloseTo(-(play.state().parts.R2?.amps ?? 0), 9);
  // back into the battery
  expect(amps("W1")).toBeCloseTo(-amps("W2"), 6);
});

test("a wire with resistance takes its share of the volts", () => {
  const circuit = withBattery()
    .part("resistor", "R1", { ohms: 10 })
    .wire("G1:+ R1:1", "R1:2 GND1:1");
  const feed = circuit.job.diagram.wires[1];
  if (feed) Object.assign(feed, { mm2: 1, metres: 50 });
  const state = playOf(circuit).state();
  // class 5 conductor of 1 mm²: 19.5 Ω/km at 20 °C (IEC 60228)
  const amps = 25.2 / (10 + 0.0195 * 50 + 0.01);
  expect(state.wires.W2?.amps).toBeCloseTo(amps, 3);
  expect(state.pins["R1:1"]?.volts).toBeCloseTo(amps * 10, 2);
  expect(state.pins["R1:1"]?.state).toBe("live");
});

test("with plus on the frame, the other pole is what is live", () => {
  const play = playOf(
    new CircuitBuilder(24)
      .part("battery", "G1")
      .part("ground", "GND1")
      .part("lamp", "P1")
      .contact("S1", "operator")
      .wire("G1:+ GND1:1", "G1:- S1:1", "S1:2 P1:1", "P1:2 GND1:1"),
  );
  const { pins } = play.state();
  expect(pins["G1:+"]).toEqual({ state: "ground", volts: 0 });
  expect(pins["S1:1"]?.state).toBe("live");
  expect(pins["S1:1"]?.volts).toBeCloseTo(-25.2, 6);
  expect(pins["S1:2"]?.state).toBe("ground-through-load");
});

test("between two batteries in series the point is live", () => {
  const play = playOf(
    new CircuitBuilder(24)
      .part("battery", "G1", { volts: 12.6 })
      .part("battery", "G2", { volts: 12.6 })
      .part("ground", "GND1")
      .part("lamp", "P1")
      .wire("G1:- GND1:1", "G1:+ G2:-", "G2:+ P1:1", "P1:2 GND1:1"),
  );
  expect(play.state().pins["G2:-"]?.state).toBe("live");
  expect(play.state().pins["G2:-"]?.volts).toBeCloseTo(12.6, 1);
  expect(play.state().pins["P1:1"]?.state).toBe("live");
});

test("a battery that nothing joins to chassis is counted from its own minus", () => {
  const play = playOf(
    new CircuitBuilder(24)
      .part("battery", "G1")
      .part("ground", "GND1")
      .part("lamp", "P1")
      .wire("G1:+ P1:1", "P1:2 G1:-"),
  );
  expect(play.state().pins["G1:+"]?.state).toBe("live");
  expect(play.state().pins["G1:+"]?.volts).toBeCloseTo(25.2, 1);
  expect(play.state().pins["GND1:1"]).toEqual({ state: "ground", volts: 0 });
});

test("a plug's cavity is the harness, a module's pin its own side", () => {
  const circuit = withBattery()
    .module("A1", { "1": "BATT", "2": "GND" })
    .wire("G1:+ A1:1", "A1:2 GND1:1");
  circuit.job.plugs.push({
    id: "X1",
    side: "mating",
    cavities: [
      { mark: "A", at: [0, 0] },
      { mark: "B", at: [5, 0] },
      { mark: "C", at: [10, 0] },
    ],
  });
  circuit.job.links.push({ pin: "A1:1", cavity: "X1:A" }, { pin: "A1:2", cavity: "X1:B" });
  const play = playOf(circuit);
  expect(play.state().cavities["X1:A"]?.state).toBe("live");
  // no pin is matched to it: the drawing does not say that nothing is there
  expect(play.state().cavities["X1:C"]).toBeUndefined();
  const open = run(play, unplug("X1"));
  expect(open.cavities["X1:A"]?.state).toBe("live");
  expect(open.cavities["X1:B"]?.state).toBe("ground");
  // nobody has said what A1 joins inside: its own pins hang on nothing that is told
  expect(open.pins["A1:1"]?.state).toBe("floating");
  expect(open.parts.X1).toBeUndefined();
  expect(open.when).toEqual({ unplugged: ["X1"] });
});

test("of an open joint the half to heed is shown, and each wire by itself", () => {
  const play = playOf(
    withBattery()
      .part("inline", "X9", { pins: [{ id: "1" }] })
      .part("lamp", "P1")
      .wire("G1:+ X9:1", "X9:1 P1:1", "P1:2 GND1:1"),
  );
  const { pins, wires } = run(play, remove("X9"));
  expect(wires.W2).toMatchObject({ state: "live", amps: 0 });
  expect(wires.W3).toMatchObject({ state: "ground-through-load", amps: 0 });
  expect(pins["X9:1"]?.state).toBe("live");
});

test("a line of a module of which nobody has said what it does is not asserted", () => {
  const play = playOf(
    withBattery()
      .key("S1")
      .module("A1", { "1": null, "2": null, "3": null, "4": null })
      .part("relay", "K1")
      .part("lamp", "P1")
      .part("lamp", "P2")
      .wire("G1:+ S1:30", "S1:15 A1:1", "A1:2 GND1:1", "A1:3 K1:86", "K1:85 GND1:1")
      .wire("G1:+ K1:30", "K1:87 P1:1", "P1:2 GND1:1", "S1:15 P2:1", "P2:2 GND1:1"),
  );
  const state = run(play, turn("S1", "run"));
  expect(state.wires.W3).toMatchObject({ state: "live" });
  expect(state.pins["A1:3"]).toEqual({ state: "unknown", volts: null });
  // what A1 drives commands K1, and K1 commands P1
  expect(state.pins["P1:1"]?.state).toBe("unknown");
  expect(state.parts.K1?.undecided).toBe(true);
  expect(state.parts.P1?.undecided).toBe(true);
  expect(state.parts.P2).toMatchObject({ on: true });
  expect(state.parts.P2?.undecided).toBeUndefined();
  expect(state.doubts).toEqual(["Not all can be told: much depends on what A1 does."]);
  const without = run(play, unplug("A1"));
  expect(without.pins["P1:1"]?.state).toBe("ground-through-load");
  expect(without.doubts).toEqual([]);
});

test("a module that is fed is on, whether or not anything hangs on it", () => {
  const play = playOf(
    withBattery()
      .contact("S1", "operator")
      .module("A1", { "1": null, "2": null }, { power: { supply: ["1"], ground: ["2"] } })
      .wire("G1:+ S1:1", "S1:2 A1:1", "A1:2 GND1:1"),
  );
  expect(isOn(play.state(), "A1")).toEqual([false]);
  expect(isOn(run(play, press("S1")), "A1")).toEqual([true]);
  expect(told(play.state().events)).toEqual(["0 powered A1"]);
  expect(isOn(run(play, unplug("A1")), "A1")).toEqual([false]);
});

test("a starter that nobody can tell of may take the battery down: live lines stay live, without volts", () => {
  const play = playOf(
    withBattery()
      .module("A1", { "1": null, "2": null, "3": null })
      .part("relay", "K1")
      .part("motor", "M1", { ohms: 0.05 })
      .part("lamp", "P1")
      .part("lamp", "P2")
      .wire("G1:+ A1:1", "A1:2 GND1:1", "A1:3 K1:86", "K1:85 GND1:1")
      .wire("G1:+ K1:30", "K1:87 M1:1", "M1:2 GND1:1", "G1:+ P1:1", "P1:2 P2:1", "P2:2 GND1:1"),
  );
  const { pins, parts } = play.state();
  expect(pins["P1:1"]).toEqual({ state: "live", volts: null });
  expect(pins["M1:1"]).toEqual({ state: "unknown", volts: null });
  expect(pins["P2:2"]).toEqual({ state: "ground", volts: 0 });
  expect(parts.M1?.undecided).toBe(true);
});

test("a relay that may have sealed itself in while nobody could tell stays doubtful until it can't have", () => {
  const play = playOf(
    withBattery()
      .contact("S1", "operator", { contacts: [{ between: ["1", "2"], closedIn: ["rest"] }] })
      .module("A1", { "1": null, "2": null, "3": null })
      .part("relay", "K1")
      .part("relay", "K2")
      .part("splice", "X1")
      .wire("G1:+ A1:1", "A1:2 GND1:1", "A1:3 X1:1", "X1:1 K1:86", "K1:85 GND1:1")
      .wire("G1:+ S1:1", "S1:2 K1:30", "K1:87 X1:1", "X1:1 K2:86", "K2:85 GND1:1"),
  );
  const undecided = () => ["K1", "K2"].map((id) => play.state().parts[id]?.undecided ?? false);
  expect(undecided()).toEqual([true, true]);
  run(play, unplug("A1"));
  // K1 may hold itself and with it K2, for all that anybody knows
  expect(undecided()).toEqual([true, true]);
  expect(play.state().doubts).toEqual([
    "Not all can be told: much depends on which way K1 was left.",
  ]);
  run(play, press("S1"));
  expect(undecided()).toEqual([false, false]);
  run(play, turn("S1", "rest"));
  expect(undecided()).toEqual([false, false]);
  expect(play.state().pins["K1:86"]?.state).toBe("ground-through-load");
});

test("two relays that may hold one another stay doubtful together", () => {
  const play = playOf(
    withBattery()
      .module("A1", { "1": null, "2": null, "3": null })
      .part("relay", "K1")
      .part("relay", "K2")
      .part("splice", "X1")
      .wire("G1:+ A1:1", "A1:2 GND1:1", "A1:3 X1:1", "X1:1 K1:86", "K1:85 GND1:1")
      .wire("G1:+ K1:30", "K1:87 K2:86", "K2:85 GND1:1", "G1:+ K2:30", "K2:87 X1:1"),
  );
  const { parts } = run(play, unplug("A1"));
  expect([parts.K1?.undecided, parts.K2?.undecided]).toEqual([true, true]);
});

test("what a toggle was told while nobody could tell is not known until it loses power", () => {
  const play = playOf(
    withBattery()
      .contact("S1", "isolator", { contacts: [{ between: ["1", "2"], closedIn: ["rest"] }] })
      .module("A1", { "1": null, "2": null, "3": null })
      .module(
        "A2",
        { "1": null, "2": null, "3": null, "4": null },
        {
          power: { supply: ["1"], ground: ["2"] },
          behaviour: {
            paths: [{ between: ["1", "4"], input: "3", active: "high", does: "toggle" }],
          },
        },
      )
      .part("lamp", "P1")
      .wire("G1:+ S1:1", "S1:2 A2:1", "A2:2 GND1:1", "G1:+ A1:1", "A1:2 GND1:1", "A1:3 A2:3")
      .wire("A2:4 P1:1", "P1:2 GND1:1"),
  );
  const undecided = () => play.state().parts.P1?.undecided ?? false;
  expect(undecided()).toBe(true);
  run(play, unplug("A1"));
  expect(undecided()).toBe(true);
  run(play, press("S1"), turn("S1", "rest"));
  expect(undecided()).toBe(false);
});
