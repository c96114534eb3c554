import { expect, test } from "vitest";
import { withBattery } from "../../support/circuit-builder.ts";
import { isOn, letGo, playOf, press, run, told } from "./hands-on.ts";

/**
 * Forward/reverse interlock with seal-in: figure 04062 of Kuphaldt, Lessons in Electric Circuits
 * vol. 4 (ladder logic). Its nets 6, 4, 5 and 3 are splices here; M1 and M2 are relays with two
 * sets of contacts, each with a lamp beside its coil that goes back to `lampReturn`.
 */
const interlock = (lampReturn: string) =>
  withBattery()
    .part("fuse", "F1", { amps: 20 })
    .contact("STOP", "operator", {
      contacts: [{ between: ["1", "2"], closedIn: ["rest"] }],
      springReturn: true,
    })
    .contact("FWD", "operator", { springReturn: true })
    .contact("REV", "operator", { springReturn: true })
    .contact("OL", "temperature", { contacts: [{ between: ["1", "2"], closedIn: ["rest"] }] })
    .part("relay", "M1", { poles: 2 })
    .part("relay", "M2", { poles: 2 })
    .part("splice", "N6")
    .part("splice", "N4")
    .part("splice", "N5")
    .part("splice", "N3")
    .part("lamp", "P1")
    .part("lamp", "P2")
    .wire("G1:+ F1:1", "F1:2 STOP:1", "STOP:2 N6:1")
    .wire("N6:1 FWD:1", "FWD:2 N4:1", "N6:1 M1:30", "M1:87 N4:1")
    .wire("N6:1 REV:1", "REV:2 N5:1", "N6:1 M2:30", "M2:87 N5:1")
    .wire("N4:1 M2:30b", "M2:87ab M1:86", "M1:85 N3:1")
    .wire("N5:1 M1:30b", "M1:87ab M2:86", "M2:85 N3:1")
    .wire("N3:1 OL:1", "OL:2 GND1:1")
    .wire("M1:86 P1:1", `P1:2 ${lampReturn}`, "M2:86 P2:1", `P2:2 ${lampReturn}`);

test("a button pressed and let go seals its relay in until stop is pressed", () => {
  const play = playOf(interlock("N3:1"));
  expect(isOn(play.state(), "M1", "M2")).toEqual([false, false]);
  expect(isOn(run(play, press("FWD")), "M1", "M2")).toEqual([true, false]);
  expect(isOn(run(play, letGo("FWD")), "M1", "M2")).toEqual([true, false]);
  expect(isOn(run(play, press("STOP")), "M1", "M2")).toEqual([false, false]);
  expect(isOn(run(play, letGo("STOP")), "M1", "M2")).toEqual([false, false]);
  expect(told(play.state().events)).toEqual([
    "0 pulled-in M1",
    "0 on P1",
    "0 dropped-out M1",
    "0 off P1",
  ]);
});

test("while one direction is sealed in, the other button does nothing", () => {
  const play = playOf(interlock("N3:1"));
  run(play, press("FWD"), letGo("FWD"));
  expect(isOn(run(play, press("REV")), "M1", "M2", "P2")).toEqual([true, false, false]);
  run(play, letGo("REV"), press("STOP"), letGo("STOP"));
  expect(isOn(run(play, press("REV")), "M1", "M2")).toEqual([false, true]);
  run(play, letGo("REV"));
  expect(isOn(run(play, press("FWD")), "M1", "M2")).toEqual([false, true]);
});

test("the overload contact lets go of whichever is in", () => {
  const play = playOf(interlock("N3:1"));
  run(play, press("FWD"), letGo("FWD"));
  expect(isOn(run(play, press("OL")), "M1", "M2")).toEqual([false, false]);
});

test("lamps that go to ground past the overload contact hold a relay in through the other's coil", () => {
  const play = playOf(interlock("GND1:1"));
  run(play, press("FWD"), letGo("FWD"));
  const state = run(play, press("OL"));
  // 320 Ω and 320 Ω in series: half the volts, and a relay holds down to a fifth of nominal
  expect(isOn(state, "M1", "M2")).toEqual([true, false]);
  expect(state.pins["N3:1"]?.state).toBe("between");
  expect(state.pins["N3:1"]?.volts).toBeCloseTo(25.2 / 2, 0);
});
