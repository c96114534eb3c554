import { expect, test } from "vitest";
import { withBattery } from "../../support/circuit-builder.ts";
import {
  engine,
  isOn,
  letGo,
  playOf,
  plug,
  press,
  refit,
  remove,
  run,
  told,
  turn,
  unplug,
  wait,
} from "./hands-on.ts";

const keyed = () =>
  withBattery()
    .part("fuse", "F1", { amps: 30 })
    .key("S1")
    .part("relay", "K1")
    .part("lamp", "P1")
    .part("motor", "M1", { ohms: 2 })
    .wire("G1:+ F1:1", "F1:2 S1:30", "S1:15 P1:1", "P1:2 GND1:1")
    .wire("S1:50 K1:86", "K1:85 GND1:1", "F1:2 K1:30", "K1:87 M1:1", "M1:2 GND1:1");

test("a key held in start falls back to run, and stays there", () => {
  const play = playOf(keyed());
  expect(play.state().parts.S1?.position).toBe("off");
  expect(isOn(run(play, turn("S1", "run")), "P1", "K1", "M1")).toEqual([true, false, false]);
  expect(isOn(run(play, turn("S1", "start")), "P1", "K1", "M1")).toEqual([true, true, true]);
  expect(play.state().when).toEqual({ switches: { S1: "start" } });
  expect(isOn(run(play, letGo("S1")), "P1", "K1", "M1")).toEqual([true, false, false]);
  expect(play.state().parts.S1?.position).toBe("run");
  expect(isOn(run(play, letGo("S1")), "P1")).toEqual([true]);
  expect(run(play, turn("S1", "off")).when).toEqual({});
});

test("a lever with springs both ways falls back to its middle", () => {
  const play = playOf(
    withBattery().part("switch", "S1", {
      positions: ["left", "middle", "right"],
      rest: "middle",
      springReturn: true,
      control: "operator",
      contacts: [{ between: ["1", "2"], closedIn: ["left"] }],
    }),
  );
  for (const side of ["left", "right"]) {
    expect(run(play, turn("S1", side)).parts.S1?.position).toBe(side);
    expect(run(play, letGo("S1")).parts.S1?.position).toBe("middle");
  }
});

test("turning a switch to where it stands does nothing", () => {
  const play = playOf(keyed());
  const before = run(play, turn("S1", "run"));
  const after = run(play, turn("S1", "run"));
  expect({ ...after, steps: [] }).toEqual({ ...before, steps: [] });
});

test("what can't be done is refused in a sentence and changes nothing", () => {
  const play = playOf(keyed());
  const before = run(play, turn("S1", "run"));
  const refusals = [
    [turn("S1", "heat"), 'S1 has no position "heat"; it has off, run, start.'],
    [turn("K1", "on"), "K1 is not a switch of this machine."],
    [letGo("S9"), "S9 is not a switch of this machine."],
    [unplug("X9"), "There is no X9 on this machine to unplug."],
    [plug("X9"), "There is no X9 on this machine to plug in."],
    [remove("F9"), "There is no F9 on this machine to take out."],
    [refit("F9"), "There is no F9 on this machine to put back."],
    [wait(-1), "A wait takes some seconds, up to 1000000, not -1."],
  ] as const;
  for (const [step, why] of refusals) {
    expect(play.step(step)).toEqual({ ...before, refused: why });
  }
  expect(run(play, wait(1)).refused).toBeNull();
});

test("a fuse that is pulled takes all that hangs on it, until it is put back", () => {
  const play = playOf(keyed());
  run(play, turn("S1", "run"));
  const pulled = run(play, remove("F1"));
  expect(isOn(pulled, "P1")).toEqual([false]);
  expect(pulled.parts.F1?.removed).toBe(true);
  expect(pulled.when).toEqual({ switches: { S1: "run" }, removed: ["F1"] });
  expect(pulled.pins["F1:1"]?.state).toBe("live");
  expect(pulled.pins["F1:2"]?.state).toBe("ground-through-load");
  expect(isOn(run(play, refit("F1")), "P1")).toEqual([true]);
});

test("with the engine running the generator carries the loads and charges the battery", () => {
  const play = playOf(
    keyed()
      .part("alternator", "G2")
      .part("lamp", "P2", { watts: 3 })
      .wire("G2:B+ G1:+", "G2:E GND1:1", "S1:15 P2:1", "P2:2 G2:D+"),
  );
  const atRest = run(play, turn("S1", "run"));
  // the charge lamp finds its ground through the field winding
  expect(isOn(atRest, "P2")).toEqual([true]);
  // W1 runs from battery minus to ground: current comes back along it
  expect(atRest.wires.W1?.amps).toBeLessThan(-1);
  const running = run(play, engine("running"));
  expect(isOn(running, "P1", "P2")).toEqual([true, false]);
  // 28.4 V: charging volts of a 24 V system (common practice, no source)
  expect(running.pins["G1:+"]?.volts).toBeCloseTo(28.4, 0);
  expect(play.volts("G1:+", "G1:-")).toBeGreaterThan(28);
  expect(running.pins["G2:D+"]?.state).toBe("live");
  expect(running.wires.W1?.amps).toBeGreaterThan(1);
  expect(told(running.events.slice(atRest.events.length))).toEqual(["0 off P2"]);
  expect(isOn(run(play, engine("off")), "P2")).toEqual([true]);
});

test("reset puts everything back", () => {
  const play = playOf(keyed());
  const rest = play.state();
  run(play, turn("S1", "start"), remove("F1"), wait(3));
  expect(play.reset()).toEqual(rest);
  expect(play.state()).toEqual(rest);
});

test("a latching relay stays where a pulse put it, and only a pulse the other way throws it back", () => {
  const play = playOf(
    withBattery()
      .contact("S1", "operator", { springReturn: true })
      .part("switch", "S2", {
        positions: ["rest", "worked"],
        springReturn: true,
        control: "operator",
        contacts: [
          { between: ["1", "2"], closedIn: ["worked"] },
          { between: ["3", "4"], closedIn: ["worked"] },
        ],
      })
      .contact("S3", "operator", { springReturn: true })
      .part("relay", "K1", { latching: true })
      .part("lamp", "P1")
      .wire("G1:+ S1:1", "S1:2 K1:86", "K1:85 S3:1", "S3:2 GND1:1")
      .wire("G1:+ S2:1", "S2:2 K1:85", "K1:86 S2:3", "S2:4 GND1:1")
      .wire("G1:+ K1:30", "K1:87 P1:1", "P1:2 GND1:1"),
  );
  expect(play.state().doubts.join(" ")).toContain("which way K1 was last latched");
  expect(isOn(run(play, press("S3"), press("S1")), "K1", "P1")).toEqual([true, true]);
  expect(run(play, letGo("S1"), letGo("S3")).doubts).toEqual([]);
  expect(isOn(play.state(), "K1", "P1")).toEqual([true, true]);
  expect(isOn(run(play, press("S3"), press("S1")), "K1")).toEqual([true]);
  run(play, letGo("S1"), letGo("S3"));
  expect(isOn(run(play, press("S2")), "K1", "P1")).toEqual([false, false]);
  expect(isOn(run(play, letGo("S2")), "K1", "P1")).toEqual([false, false]);
});
