import { expect, test } from "vitest";
import { type CircuitBuilder, withBattery } from "../../support/circuit-builder.ts";
import { isOn, letGo, playOf, press, refit, remove, run, told, turn } from "./hands-on.ts";

/**
 * An unwanted ground between a switch and a lamp (Kuphaldt, Lessons in Electric Circuits vol. 4,
 * ladder logic): with the switch on the supply side no lamp and a blown fuse when the switch
 * closes; with switch and lamp exchanged the lamp burns whatever the switch does.
 */
const fused = () =>
  withBattery()
    .part("fuse", "F1", { amps: 10 })
    .contact("S1", "operator")
    .part("lamp", "P1")
    .part("splice", "X1")
    .part("ground", "GND2")
    .wire("G1:+ F1:1");

test("a ground behind the switch blows the fuse when the switch closes, and is named", () => {
  const play = playOf(
    fused().wire("F1:2 S1:1", "S1:2 X1:1", "X1:1 P1:1", "P1:2 GND1:1", "X1:1 GND2:1"),
  );
  expect(play.state().events).toEqual([]);
  const state = run(play, press("S1"));
  expect(isOn(state, "P1")).toEqual([false]);
  expect(state.parts.F1?.blown).toBe(true);
  expect(state.pins["F1:1"]?.state).toBe("live");
  expect(state.pins["F1:2"]?.state).toBe("ground");
  // the wires and parts from the fuse to ground, in order, and not the lamp beside them
  expect(told(state.events)).toEqual(["0 blew F1 by W3 S1 W4 X1 W7 GND2"]);
  const [blew] = state.events;
  // 25.2 V through 0.01 Ω of battery
  expect(blew?.what === "blew" && blew.amps).toBeCloseTo(2520, -1);
  // it stays blown, a new one blows again as long as the switch is closed, and then holds
  expect(run(play, press("S1")).parts.F1?.blown).toBe(true);
  expect(run(play, refit("F1")).parts.F1?.blown).toBe(true);
  run(play, turn("S1", "rest"));
  expect(play.state().parts.F1?.blown).toBe(true);
  expect(run(play, refit("F1")).parts.F1?.blown).toBeUndefined();
  expect(told(play.state().events)).toHaveLength(2);
});

test("with switch and lamp exchanged the same ground leaves the lamp lit whatever the switch does", () => {
  const play = playOf(
    fused().wire("F1:2 P1:1", "P1:2 X1:1", "X1:1 S1:1", "S1:2 GND1:1", "X1:1 GND2:1"),
  );
  expect(isOn(play.state(), "P1")).toEqual([true]);
  expect(isOn(run(play, press("S1")), "P1")).toEqual([true]);
  expect(isOn(run(play, turn("S1", "rest")), "P1")).toEqual([true]);
  expect(play.state().parts.F1?.blown).toBeUndefined();
});

const heaters = (kind: "fuse" | "breaker", amps: number, circuit: CircuitBuilder = withBattery()) =>
  circuit
    .part(kind, "F1", { amps })
    .contact("S1", "operator")
    .contact("S2", "operator")
    .part("heater", "E1", { ohms: 4 })
    .part("heater", "E2", { ohms: 2 })
    .part("lamp", "P1", { watts: 5 })
    .wire("G1:+ F1:1", "F1:2 S1:1", "S1:2 E1:1", "E1:2 GND1:1")
    .wire("F1:2 S2:1", "S2:2 E2:1", "E2:2 GND1:1", "F1:2 P1:1", "P1:2 GND1:1");

test("loads that together are too much blow the fuse, the largest named first", () => {
  const play = playOf(heaters("fuse", 12));
  expect(run(play, press("S2")).parts.F1?.blown).toBeUndefined();
  const state = run(play, press("S1"));
  // 12.6 A, 6.3 A and 0.2 A through 12 A: above 1.35 times its rating
  expect(told(state.events).slice(-3)).toEqual(["0 blew F1 by E2 E1 P1", "0 off E2", "0 off P1"]);
  expect(isOn(state, "E1", "E2", "P1")).toEqual([false, false, false]);
});

test("a fuse holds at up to 1.35 times its rating", () => {
  // E2 and P1 draw some 12.7 A
  expect(run(playOf(heaters("fuse", 9.6)), press("S2")).parts.F1?.blown).toBeUndefined();
  expect(run(playOf(heaters("fuse", 9.2)), press("S2")).parts.F1?.blown).toBe(true);
});

test("a breaker opens alike, and is put in again by hand once the cause is gone", () => {
  const play = playOf(heaters("breaker", 12));
  run(play, press("S1"), press("S2"));
  expect(play.state().parts.F1?.blown).toBe(true);
  run(play, turn("S2", "rest"));
  expect(isOn(run(play, refit("F1")), "E1")).toEqual([true]);
});

test("taking out one that has blown and putting it back fits a new one", () => {
  const play = playOf(heaters("fuse", 4));
  run(play, press("S1"), turn("S1", "rest"), remove("F1"));
  expect(play.state().parts.F1).toMatchObject({ blown: true, removed: true });
  run(play, refit("F1"));
  expect(play.state().parts.F1?.blown).toBeUndefined();
  expect(play.state().parts.F1?.removed).toBeUndefined();
  expect(isOn(play.state(), "P1")).toEqual([true]);
});

test("of two fuses in one line the weaker opens, and the other holds", () => {
  const play = playOf(
    withBattery()
      .part("fuse", "F1", { amps: 30 })
      .part("fuse", "F2", { amps: 5 })
      .contact("S1", "operator")
      .wire("G1:+ F1:1", "F1:2 F2:1", "F2:2 S1:1", "S1:2 GND1:1"),
  );
  const { parts, events } = run(play, press("S1"));
  expect(parts.F2?.blown).toBe(true);
  expect(parts.F1?.blown).toBeUndefined();
  expect(told(events)).toEqual(["0 blew F2 by W4 S1 W5 GND1"]);
});

test("a short that is there from the start blows at the start", () => {
  const play = playOf(withBattery().part("fuse", "F1").wire("G1:+ F1:1", "F1:2 G1:-"));
  expect(told(play.state().events)).toEqual(["0 blew F1 by W3"]);
});

test("a relay whose fuse blows drops out afterwards", () => {
  const play = playOf(
    withBattery()
      .part("fuse", "F1", { amps: 5 })
      .contact("S1", "operator", { springReturn: true })
      .part("relay", "K1")
      .part("heater", "E1", { ohms: 1 })
      .wire("G1:+ F1:1", "F1:2 S1:1", "S1:2 K1:86", "K1:85 GND1:1")
      .wire("F1:2 K1:30", "K1:87 E1:1", "E1:2 GND1:1"),
  );
  const state = run(play, press("S1"), letGo("S1"));
  expect(told(state.events)).toEqual(["0 pulled-in K1", "0 blew F1 by E1", "0 dropped-out K1"]);
});

test("a fuse in a line that chatters is heated by the mean of the squares", () => {
  const chattering = (amps: number) =>
    playOf(
      withBattery()
        .part("fuse", "F1", { amps })
        .part("relay", "K1")
        .part("heater", "E1", { ohms: 1 })
        .wire("G1:+ K1:30", "K1:87a K1:86", "K1:85 GND1:1")
        .wire("K1:87 F1:1", "F1:2 E1:1", "E1:2 GND1:1"),
    );
  // 24.9 A half of the time heats like 17.6 A
  expect(chattering(14).state().parts.F1?.blown).toBeUndefined();
  expect(chattering(12).state().parts.F1?.blown).toBe(true);
  expect(told(chattering(12).state().events)).toEqual(["0 blew F1 by E1", "0 oscillates K1"]);
});

test("charging too fast through a fuse blows it, and the battery is what drew it", () => {
  const play = playOf(
    withBattery()
      .part("alternator", "G2")
      .part("fuse", "F1", { amps: 1 })
      .wire("G2:B+ F1:1", "F1:2 G1:+", "G2:E GND1:1"),
  );
  const state = run(play, { do: "engine", engine: "running" });
  expect(told(state.events)).toEqual(["0 blew F1 by G1"]);
});
