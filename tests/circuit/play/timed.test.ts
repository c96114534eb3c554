import { expect, test } from "vitest";
import type { PartOf } from "../../../src/job/index.ts";
import { withBattery } from "../../support/circuit-builder.ts";
import { isOn, letGo, playOf, press, run, told, turn, wait } from "./hands-on.ts";

type Path = NonNullable<PartOf<"module">["behaviour"]>["paths"][number];

/**
 * A module fed from key position run, with an input from a button S2 and a lamp on its output;
 * `path` is what it does between its feed and the output.
 */
const moduleThat = (path: Omit<Path, "between">, power = true) =>
  withBattery()
    .key("S1")
    .contact("S2", "operator", { springReturn: true })
    .module(
      "A1",
      { "1": "BATT", "2": "GND", "3": "IN", "4": "OUT" },
      {
        ...(power ? { power: { supply: ["1"], ground: ["2"] } } : {}),
        behaviour: { paths: [{ between: ["1", "4"], ...path }] },
      },
    )
    .part("lamp", "P1")
    .wire("G1:+ S1:30", "S1:15 A1:1", "A1:2 GND1:1")
    .wire("S1:15 S2:1", "S2:2 A1:3", "A1:4 P1:1", "P1:2 GND1:1");

const input = { input: "3", active: "high" } as const;

test("follow and invert act at once", () => {
  const follows = playOf(moduleThat({ ...input, does: "follow" }));
  run(follows, turn("S1", "run"));
  expect(isOn(follows.state(), "A1", "P1")).toEqual([true, false]);
  expect(isOn(run(follows, press("S2")), "P1")).toEqual([true]);
  expect(isOn(run(follows, letGo("S2")), "P1")).toEqual([false]);
  const inverts = playOf(moduleThat({ ...input, does: "invert" }));
  expect(isOn(inverts.state(), "P1")).toEqual([false]);
  expect(isOn(run(inverts, turn("S1", "run")), "P1")).toEqual([true]);
  expect(isOn(run(inverts, press("S2")), "P1")).toEqual([false]);
});

test("toggle changes on the press and not on the release, and forgets without power", () => {
  const play = playOf(moduleThat({ ...input, does: "toggle" }));
  run(play, turn("S1", "run"));
  expect(isOn(run(play, press("S2")), "P1")).toEqual([true]);
  expect(isOn(run(play, letGo("S2")), "P1")).toEqual([true]);
  expect(isOn(run(play, press("S2")), "P1")).toEqual([false]);
  run(play, letGo("S2"), press("S2"), letGo("S2"));
  expect(isOn(play.state(), "P1")).toEqual([true]);
  expect(isOn(run(play, turn("S1", "off")), "A1", "P1")).toEqual([false, false]);
  expect(isOn(run(play, turn("S1", "run")), "A1", "P1")).toEqual([true, false]);
});

test("a button already held when the module wakes is no press", () => {
  const play = playOf(moduleThat({ ...input, does: "toggle" }));
  run(play, press("S2"));
  expect(isOn(run(play, turn("S1", "run")), "P1")).toEqual([false]);
});

test("delay on closes once its input has been there long enough, and not sooner", () => {
  const play = playOf(moduleThat({ ...input, does: "delay-on", seconds: 2 }));
  run(play, turn("S1", "run"), press("S2"));
  expect(play.state().nextIn).toBe(2);
  expect(isOn(run(play, wait(1.5)), "P1")).toEqual([false]);
  expect(play.state().nextIn).toBe(0.5);
  run(play, letGo("S2"));
  expect(play.state().nextIn).toBeNull();
  expect(isOn(run(play, wait(5)), "P1")).toEqual([false]);
  expect(isOn(run(play, press("S2"), wait(2)), "P1")).toEqual([true]);
  expect(isOn(run(play, letGo("S2")), "P1")).toEqual([false]);
  expect(told(play.state().events)).toEqual([
    "0 powered A1",
    "8.5 path-closed A1 1-4",
    "8.5 on P1",
    "8.5 path-opened A1 1-4",
    "8.5 off P1",
  ]);
});

test("delay off holds on after its input has gone, and a new press starts it again", () => {
  const play = playOf(moduleThat({ ...input, does: "delay-off", seconds: 3 }));
  run(play, turn("S1", "run"));
  expect(isOn(play.state(), "P1")).toEqual([false]);
  expect(isOn(run(play, press("S2")), "P1")).toEqual([true]);
  expect(play.state().nextIn).toBeNull();
  expect(isOn(run(play, letGo("S2"), wait(2)), "P1")).toEqual([true]);
  expect(isOn(run(play, press("S2"), wait(2), letGo("S2"), wait(2.9)), "P1")).toEqual([true]);
  expect(isOn(run(play, wait(0.1)), "P1")).toEqual([false]);
  expect(isOn(run(play, press("S2"), letGo("S2"), turn("S1", "off")), "P1")).toEqual([false]);
  expect(play.state().nextIn).toBeNull();
  expect(isOn(run(play, turn("S1", "run")), "P1")).toEqual([false]);
});

test("a flasher starts lit and takes turns for as long as it is told to", () => {
  const play = playOf(moduleThat({ ...input, does: "flash", seconds: 0.4 }));
  run(play, turn("S1", "run"), press("S2"));
  expect(isOn(play.state(), "P1")).toEqual([true]);
  const lit = [0.4, 0.4, 0.4, 0.4].map((seconds) => isOn(run(play, wait(seconds)), "P1")[0]);
  expect(lit).toEqual([false, true, false, true]);
  expect(isOn(run(play, wait(100)), "P1")).toEqual([true]);
  expect(play.state().seconds).toBe(101.6);
  expect(isOn(run(play, letGo("S2")), "P1")).toEqual([false]);
  expect(play.state().nextIn).toBeNull();
});

test("a flasher of which nobody has said how fast takes the usual time, and says so", () => {
  const play = playOf(moduleThat({ does: "flash" }));
  expect(play.state().doubts.join(" ")).toContain("how fast A1 flashes");
  run(play, turn("S1", "run"));
  // half of 1.5 Hz or so, within 60 to 120 flashes a minute (from memory)
  expect(play.state().nextIn).toBeGreaterThanOrEqual(0.25);
  expect(play.state().nextIn).toBeLessThanOrEqual(0.5);
});

test("a wait in which too much happens is refused, and says how long is not too much", () => {
  const play = playOf(moduleThat({ does: "flash", seconds: 0.5 }));
  const before = run(play, turn("S1", "run"));
  const refused = play.step(wait(36_000));
  expect({ ...refused, refused: null }).toEqual(before);
  const least = Number(/wait (\d+) s/.exec(refused.refused ?? "")?.[1]);
  expect(least).toBeGreaterThan(60);
  expect(run(play, wait(least)).seconds).toBe(least);
});

test("nothing is timed without power", () => {
  const play = playOf(moduleThat({ ...input, does: "delay-on", seconds: 2 }));
  run(play, press("S2"), wait(10));
  expect(isOn(run(play, turn("S1", "run")), "P1")).toEqual([false]);
  expect(play.state().nextIn).toBe(2);
  run(play, wait(1), turn("S1", "off"), turn("S1", "run"));
  expect(play.state().nextIn).toBe(2);
});

test("a module that tells another one acts before it, and both are told of in order", () => {
  const play = playOf(
    moduleThat({ ...input, does: "delay-on", seconds: 1 })
      .module(
        "A2",
        { "1": null, "2": null, "3": null, "4": null },
        {
          power: { supply: ["1"], ground: ["2"] },
          behaviour: {
            paths: [
              { between: ["1", "4"], input: "3", active: "high", does: "delay-off", seconds: 1 },
            ],
          },
        },
      )
      .part("lamp", "P2")
      .wire("G1:+ A2:1", "A2:2 GND1:1", "A1:4 A2:3", "A2:4 P2:1", "P2:2 GND1:1"),
  );
  run(play, turn("S1", "run"), press("S2"), wait(1.5), letGo("S2"), wait(2));
  expect(told(play.state().events)).toEqual([
    "0 powered A2",
    "0 powered A1",
    "1 path-closed A1 1-4",
    "1 path-closed A2 1-4",
    "1 on P1",
    "1 on P2",
    "1.5 path-opened A1 1-4",
    "1.5 off P1",
    "2.5 path-opened A2 1-4",
    "2.5 off P2",
  ]);
});

test("a relay that breaks its own coil chatters: it is named once, and not looped on", () => {
  const play = playOf(
    withBattery()
      .contact("S1", "operator")
      .part("relay", "K1")
      .part("lamp", "P1")
      .part("lamp", "P2")
      .wire("G1:+ S1:1", "S1:2 K1:30", "K1:87a K1:86", "K1:85 GND1:1")
      .wire("K1:87 P1:1", "P1:2 GND1:1", "S1:2 P2:1", "P2:2 GND1:1"),
  );
  const state = run(play, press("S1"), wait(1), wait(1));
  expect(state.oscillating).toEqual(["K1"]);
  expect(state.parts.K1?.oscillates).toBe(true);
  expect(state.nextIn).toBeNull();
  expect(told(state.events)).toEqual(["0 on P2", "0 oscillates K1"]);
  // what hangs on it is not asserted, what does not is
  expect(state.pins["P1:1"]?.state).toBe("unknown");
  expect(state.pins["P2:1"]?.state).toBe("live");
  expect(state.parts.P1?.undecided).toBe(true);
  expect(state.doubts.join(" ")).toContain("K1");
  expect(run(play, letGo("S1")).oscillating).toEqual(["K1"]);
  const off = run(play, turn("S1", "rest"));
  expect(off.oscillating).toEqual([]);
  expect(off.parts.P1?.undecided).toBeUndefined();
  expect(told(run(play, press("S1")).events).filter((one) => one.includes("osc"))).toHaveLength(2);
});

test("two relays that each undo the other are both named, and a bystander is not", () => {
  const play = playOf(
    withBattery()
      .part("relay", "K1")
      .part("relay", "K2")
      .part("relay", "K3")
      .wire("G1:+ K1:30", "K1:87a K2:86", "K2:85 GND1:1")
      .wire("G1:+ K2:30", "K2:87 K1:86", "K1:85 GND1:1")
      .wire("G1:+ K3:86", "K3:85 GND1:1"),
  );
  expect(play.state().oscillating).toEqual(["K1", "K2"]);
  expect(play.state().parts.K3).toMatchObject({ on: true });
});

test("a slow oscillator takes its time, and does not count as chatter", () => {
  // a delay that starves its own input through a relay
  const play = playOf(
    moduleThat({ ...input, does: "delay-on", seconds: 1 })
      .part("relay", "K1")
      .wire("A1:4 K1:86", "K1:85 GND1:1", "S1:15 K1:30", "K1:87a A1:3"),
  );
  run(play, turn("S1", "run"), wait(3.5));
  expect(play.state().oscillating).toEqual([]);
  const closings = told(play.state().events).filter((one) => one.includes("pulled-in"));
  expect(closings).toEqual(["1 pulled-in K1", "2 pulled-in K1", "3 pulled-in K1"]);
});
