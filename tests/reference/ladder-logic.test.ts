import { describe, expect, test } from "vitest";
import { createPlay, solveCircuit } from "../../src/circuit/index.ts";
import type { Job, Step, When } from "../../src/job/index.ts";
import { CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

/**
 * The logic of T. R. Kuphaldt, Lessons in Electric Circuits, vol. IV (Digital), chapter "Ladder
 * logic", under the Design Science License, on 24 V relays.
 */

/**
 * Figure 04062: a motor run forward or reverse, each contactor sealed in by its own contact and
 * locked out by the other's. What each net that the figure letters joins: S1 is stop, S2 forward,
 * S4 reverse, K1 and K2 are M1 and M2, Q1 is the overload.
 */
const NETS: Readonly<Record<string, string>> = {
  L1: "G1:+ S1:1",
  6: "S1:2 S2:1 K1:30 S4:1 K2:30",
  4: "S2:2 K1:87 K2:30b",
  5: "S4:2 K2:87 K1:30b",
  1: "K2:87ab K1:86",
  2: "K1:87ab K2:86",
  3: "K1:85 K2:85 Q1:1",
  L2: "Q1:2 GND1:1",
};

const forwardReverse = (nets = NETS): Job =>
  withBattery(24)
    // normally closed
    .contact("S1", "operator", { contacts: [{ between: ["1", "2"], closedIn: ["rest"] }] })
    .contact("S2", "operator", { springReturn: true })
    .contact("S4", "operator", { springReturn: true })
    .part("relay", "K1", { poles: 2 })
    .part("relay", "K2", { poles: 2 })
    .part("breaker", "Q1", { amps: 5 })
    .wire(...Object.values(nets)).job;

const turn = (id: string): Step => ({ do: "turn", switch: id, position: "worked" });
const release = (id: string): Step => ({ do: "release", switch: id });

/** Which of the two contactors are in after each of these steps. */
function contactorsAfter(job: Job, ...steps: readonly Step[]): string[] {
  const play = createPlay(job, null);
  return steps.map((step) => {
    const { parts, refused } = play.step(step);
    expect(refused).toBeNull();
    return ["K1", "K2"].filter((id) => parts[id]?.on).join(" ");
  });
}

describe("forward and reverse, interlocked and sealed in (figure 04062)", () => {
  test("forward pulls M1 in, and its own contact keeps it in when the button is let go", () => {
    expect(contactorsAfter(forwardReverse(), turn("S2"), release("S2"))).toEqual(["K1", "K1"]);
    expect(contactorsAfter(forwardReverse(), turn("S4"), release("S4"))).toEqual(["K2", "K2"]);
  });

  test("while M1 is in, reverse does nothing: M1 has opened M2's line", () => {
    const job = forwardReverse();
    expect(contactorsAfter(job, turn("S2"), release("S2"), turn("S4"))).toEqual(["K1", "K1", "K1"]);
    const play = createPlay(job, null);
    for (const step of [turn("S2"), release("S2"), turn("S4")]) play.step(step);
    expect(play.volts("S4:2", "chassis")).toBeCloseTo(25.2, 1);
    expect(play.volts("K2:86", "K2:85")).toBeCloseTo(0, 3);
  });

  test("stop lets both go, and what was sealed in stays out", () => {
    const steps = [
      turn("S2"),
      release("S2"),
      turn("S1"),
      { do: "turn", switch: "S1", position: "rest" },
    ];
    expect(contactorsAfter(forwardReverse(), ...(steps as Step[]))).toEqual(["K1", "K1", "", ""]);
  });

  test("after a stop the other direction can be had", () => {
    const job = forwardReverse();
    const rest: Step = { do: "turn", switch: "S1", position: "rest" };
    const steps = [turn("S2"), release("S2"), turn("S1"), rest, turn("S4"), release("S4")];
    expect(contactorsAfter(job, ...steps).at(-1)).toBe("K2");
  });

  test("with the overload open neither pulls in", () => {
    expect(contactorsAfter(forwardReverse(), { do: "remove", id: "Q1" }, turn("S2"))).toEqual([
      "",
      "",
    ]);
  });

  test("a state given all at once knows no yesterday: with no button pressed nothing is sealed in", () => {
    const relays = (when: When) => [...solveCircuit(forwardReverse(), null, when).relays.values()];
    expect(relays({})).toEqual([false, false]);
    expect(relays({ switches: { S2: "worked" } })).toEqual([true, false]);
  });

  test("both buttons at the same instant: never both in, unless it is said that they chatter", () => {
    const both = { switches: { S2: "worked", S4: "worked" } };
    const { relays, oscillating } = solveCircuit(forwardReverse(), null, both);
    const settled = oscillating.length === 0 ? [...relays.values()].filter(Boolean) : [];
    expect(settled.length).toBeLessThan(2);
  });

  test("without the interlock both would be in: that is what it is for", () => {
    const bridged = { ...NETS, 4: "S2:2 K1:87 K1:86", 5: "S4:2 K2:87 K2:86", 1: "", 2: "" };
    const job = forwardReverse(bridged);
    expect(contactorsAfter(job, turn("S2"), release("S2"), turn("S4"))).toEqual([
      "K1",
      "K1",
      "K1 K2",
    ]);
  });
});

describe("an unwanted ground (same chapter, figure 04007)", () => {
  /** Fuse, then switch and lamp in either order, with the line between them grounded. */
  const grounded = (order: "switch first" | "lamp first", fault = true) => {
    const [first, second] = order === "switch first" ? ["S1", "P1"] : ["P1", "S1"];
    return withBattery(24)
      .part("fuse", "F1", { amps: 10 })
      .contact("S1", "operator")
      .part("lamp", "P1", { watts: 24 })
      .part("ground", "GND9")
      .wire("G1:+ F1:1", `F1:2 ${first}:1`, `${first}:2 ${second}:1`, `${second}:2 GND1:1`)
      .wire(...(fault ? [`${first}:2 GND9:1`] : [])).job;
  };
  const lampVolts = (job: Job, when: When) =>
    Math.abs(solveCircuit(job, null, when).volts("P1:1", "P1:2") ?? 0);
  const blown = (job: Job, when: When) => solveCircuit(job, null, when).blown;
  const on = { switches: { S1: "worked" } };

  test("behind a switch on the supply side: no lamp, and a blown fuse when the switch closes", () => {
    const job = grounded("switch first");
    expect([lampVolts(job, {}), blown(job, {})]).toEqual([0, []]);
    expect(lampVolts(job, on)).toBeLessThan(0.01);
    expect(blown(job, on)).toEqual(["F1"]);
    const play = createPlay(job, null);
    const { parts } = play.step(turn("S1"));
    expect([parts.F1?.blown, parts.P1?.on]).toEqual([true, false]);
  });

  test("with lamp and switch exchanged: the lamp is lit whatever the switch does, no fuse blows", () => {
    const job = grounded("lamp first");
    for (const when of [{}, on]) {
      expect(lampVolts(job, when)).toBeCloseTo(25.2, 1);
      expect(blown(job, when)).toEqual([]);
    }
  });

  test("without it the switch decides in either order", () => {
    for (const order of ["switch first", "lamp first"] as const) {
      const job = grounded(order, false);
      expect([lampVolts(job, {}) < 0.01, lampVolts(job, on) > 25]).toEqual([true, true]);
    }
  });

  test("a supply that is grounded nowhere bears it: the lamp works as before", () => {
    // why one side of a control supply is grounded on purpose: an earth fault then shows itself
    const job = grounded("switch first");
    const minus = job.diagram.wires.findIndex(({ from }) => from === "G1:-");
    job.diagram.wires.splice(minus, 1);
    for (const wire of job.diagram.wires) if (wire.to === "GND1:1") wire.to = "G1:-";
    expect(lampVolts(job, on)).toBeCloseTo(25.2, 1);
    expect(blown(job, on)).toEqual([]);
  });
});

describe("a lifted ground", () => {
  /** Two heaters on one ground; the second's feed has another heater to a ground of its own. */
  const shared = (removed: string[]) => {
    const { job } = withBattery(24)
      .contact("S1", "operator")
      .contact("S2", "operator")
      .part("heater", "E1", { ohms: 10 })
      .part("heater", "E2", { ohms: 6 })
      .part("heater", "E3", { ohms: 4 })
      .part("ground", "GND8")
      .part("ground", "GND9")
      .wire("G1:+ S1:1", "G1:+ S2:1", "S1:2 E1:1", "S2:2 E2:1", "S2:2 E3:1")
      .wire("E1:2 GND8:1", "E2:2 GND8:1", "E3:2 GND9:1");
    for (const part of job.diagram.parts) {
      if (part.kind === "battery") Object.assign(part, { volts: 20, ohms: 0 });
    }
    return solveCircuit(job, null, { switches: { S1: "worked" }, removed });
  };

  test("the current goes back through what shares it: three loads in series (Ohm's law)", () => {
    const good = shared([]);
    expect(good.volts("E1:1", "E1:2")).toBeCloseTo(20, 2);
    expect(good.volts("E3:1", "E3:2")).toBeCloseTo(0, 3);
    // 20 V over 10 + 6 + 4 Ω is 1 A
    const lifted = shared(["GND8"]);
    expect(lifted.volts("E1:1", "E1:2")).toBeCloseTo(10, 2);
    expect(lifted.volts("E2:2", "E2:1")).toBeCloseTo(6, 2);
    expect(lifted.volts("E3:1", "E3:2")).toBeCloseTo(4, 2);
  });

  test("a module whose ground is lifted does nothing, and its ground pin stands near supply", () => {
    const { job } = withBattery(24)
      .contact("S1", "operator")
      .part("lamp", "P1", { watts: 5 })
      .part("ground", "GND8")
      .part("fuse", "F1", { amps: 10 })
      .module(
        "A1",
        { "1": null, "2": null, "3": null, "4": null },
        {
          power: { supply: ["1"], ground: ["2"] },
          behaviour: {
            paths: [{ between: ["1", "4"], input: "3", active: "high", does: "follow" }],
            loads: [{ between: ["1", "2"], ohms: 220 }],
          },
        },
      )
      .wire(
        "G1:+ F1:1",
        "F1:2 A1:1",
        "A1:2 GND8:1",
        "F1:2 S1:1",
        "S1:2 A1:3",
        "A1:4 P1:1",
        "P1:2 GND1:1",
      );
    const solve = (removed: string[]) =>
      solveCircuit(job, null, { switches: { S1: "worked" }, removed });
    expect(solve([]).volts("P1:1", "P1:2")).toBeCloseTo(25.2, 1);
    const lifted = solve(["GND8"]);
    expect(lifted.volts("P1:1", "P1:2") ?? 0).toBe(0);
    expect(lifted.volts("A1:2", "A1:1")).toBeCloseTo(0, 3);
    expect(lifted.volts("A1:2", "chassis")).toBeGreaterThan(25);
  });
});

describe("a relay that undoes what keeps it in", () => {
  const feedThroughOwn = (contact: string) =>
    solveCircuit(
      new CircuitBuilder(24)
        .part("battery", "G1", { volts: 24, ohms: 0 })
        .part("relay", "K1", { coilOhms: 320 })
        .part("relay", "K2", { coilOhms: 320 })
        .wire("G1:+ K1:30", `K1:${contact} K1:86`, "K1:85 G1:-", "G1:+ K2:86", "K2:85 G1:-").job,
      null,
      {},
    );

  test("through its own resting contact it chatters, and only it is named", () => {
    const { oscillating, relays } = feedThroughOwn("87a");
    expect(oscillating).toEqual(["K1"]);
    expect(relays.get("K2")).toBe(true);
  });

  test("through its own working contact it stays out, and nothing is said", () => {
    const { oscillating, relays } = feedThroughOwn("87");
    expect([oscillating, relays.get("K1")]).toEqual([[], false]);
  });

  test("three in a ring, each opening the next, never rest either", () => {
    const ring = new CircuitBuilder(24)
      .part("battery", "G1", { volts: 24, ohms: 0 })
      .part("relay", "K1", { coilOhms: 320 })
      .part("relay", "K2", { coilOhms: 320 })
      .part("relay", "K3", { coilOhms: 320 });
    for (const [one, next] of [
      ["K1", "K2"],
      ["K2", "K3"],
      ["K3", "K1"],
    ]) {
      ring.wire(`G1:+ ${one}:30`, `${one}:87a ${next}:86`, `${one}:85 G1:-`);
    }
    const { oscillating } = solveCircuit(ring.job, null, {});
    expect([...oscillating].sort()).toEqual(["K1", "K2", "K3"]);
  });

  test("and the play says so instead of going on for ever", () => {
    const { job } = withBattery(24)
      .contact("S1", "operator")
      .part("relay", "K1", { coilOhms: 320 })
      .wire("G1:+ S1:1", "S1:2 K1:30", "K1:87a K1:86", "K1:85 GND1:1");
    const play = createPlay(job, null);
    expect(play.state().oscillating).toEqual([]);
    expect(play.step(turn("S1")).oscillating).toEqual(["K1"]);
  });
});
