import { expect, test } from "vitest";
import { createPlay, kindOf, setUp, solveCircuit } from "../../src/circuit/index.ts";
import { predict } from "../../src/readings/index.ts";
import { CircuitBuilder } from "../support/circuit-builder.ts";

test("a published lamp's cold ohms lie in the band, its hot ohms under load are exact", () => {
  // Kuphaldt: a 100 W, 120 V bulb has 144 Ω hot and about 9.5 Ω cold; the ratio holds at any voltage,
  // so scaled to 24 V and 4 W: 144 Ω hot
  const lamp = new CircuitBuilder(24)
    .part("battery", "G1", { volts: 24, ohms: 0 })
    .part("lamp", "P1", { watts: 4 })
    .wire("G1:+ P1:1", "P1:2 G1:-").job;
  const amps = solveCircuit(lamp, null, {}).flows.find(({ part }) => part === "P1")?.amps ?? 0;
  expect(24 / amps).toBeCloseTo(144, 3);
  const cold = predict(lamp, "machine1", {
    quantity: "ohms",
    red: "P1:1",
    black: "P1:2",
    when: { removed: ["G1"] },
  });
  expect(cold.predicted).toBeCloseTo(14.4, 1);
  expect(cold.low ?? 99).toBeLessThanOrEqual(9.5);
  expect(cold.high ?? 0).toBeGreaterThanOrEqual(14.4);
});

/** A relay coil on an adjustable source. */
const relay = (nominal: number, volts: number, coilOhms: number, pullIn: number, dropOut: number) =>
  solveCircuit(
    new CircuitBuilder(nominal)
      .part("battery", "G1", { volts, ohms: 0 })
      .part("relay", "K1", { coilOhms, pullIn: pullIn / nominal, dropOut: dropOut / nominal })
      .wire("G1:+ K1:86", "K1:85 G1:-").job,
    null,
    {},
  ).relays.get("K1");

test("relays pull in where US MIL-R-83536/9 and /10 say", () => {
  // 12 V coil: 80 Ω, picks up by 10 V, drops out above 0.5 V; 28 V coil: 320 Ω, 19.8 V, 1.5 V
  expect(relay(12, 10.1, 80, 10, 0.5)).toBe(true);
  expect(relay(12, 9.9, 80, 10, 0.5)).toBe(false);
  expect(relay(28, 19.9, 320, 19.8, 1.5)).toBe(true);
  expect(relay(28, 19.7, 320, 19.8, 1.5)).toBe(false);
});

test("a relay of which nothing is said has the coil of that standard and pulls in near 75 %", () => {
  // US MIL-R-83536/9: 80 Ω at 12 V; general practice: pull-in near 75 % of rated
  const circuit = (volts: number) =>
    new CircuitBuilder(12)
      .part("battery", "G1", { volts, ohms: 0 })
      .part("relay", "K1")
      .wire("G1:+ K1:86", "K1:85 G1:-").job;
  const solved = solveCircuit(circuit(12), null, {});
  expect(solved.flows.find(({ part }) => part === "K1")?.amps).toBeCloseTo(-0.15, 4);
  expect(solved.relays.get("K1")).toBe(true);
  expect(solveCircuit(circuit(8.9), null, {}).relays.get("K1")).toBe(false);
});

test("a meter of 400 kΩ shows 10 V where 15 V are", () => {
  // 30 V across two 400 kΩ read with a 400 kΩ meter shows 10 V (reference values, meters)
  const job = new CircuitBuilder(30)
    .part("battery", "G1", { volts: 30, ohms: 0 })
    .part("resistor", "R1", { ohms: 400e3 })
    .part("resistor", "R2", { ohms: 400e3 })
    .wire("G1:+ R1:1", "R1:2 R2:1", "R2:2 G1:-").job;
  const meter = { is: "ohmic", ohms: 400e3, low: 400e3, high: 400e3 } as const;
  const held = solveCircuit(job, null, {}, [{ red: "R2:1", black: "R2:2", acts: meter }]);
  expect(held.volts("R2:1", "R2:2")).toBeCloseTo(10, 3);
  expect(solveCircuit(job, null, {}).volts("R2:1", "R2:2")).toBeCloseTo(15, 3);
});

test.each([
  // US MIL-R-83536/9 and /10: coil ohms, pick-up and drop-out volts
  { nominal: 12, coilOhms: 80, pullIn: 10, dropOut: 0.5 },
  { nominal: 28, coilOhms: 320, pullIn: 19.8, dropOut: 1.5 },
])("a $nominal V relay of that standard holds down to its drop-out volts once it is in", (coil) => {
  const { nominal, coilOhms, pullIn, dropOut } = coil;
  /** Whether it is in with the full voltage, and then with a resistor that leaves it `volts`. */
  const afterwards = (volts: number) => {
    const { job } = new CircuitBuilder(nominal)
      .part("battery", "G1", { volts: nominal, ohms: 0 })
      .part("relay", "K1", { coilOhms, pullIn: pullIn / nominal, dropOut: dropOut / nominal })
      .contact("S1", "operator", { springReturn: true })
      .part("resistor", "R1", { ohms: coilOhms * (nominal / volts - 1) })
      .wire("G1:+ S1:1", "G1:+ R1:1", "S1:2 K1:86", "R1:2 K1:86", "K1:85 G1:-");
    const play = createPlay(job, null);
    const before = play.state().parts.K1?.on;
    const pressed = play.step({ do: "turn", switch: "S1", position: "worked" }).parts.K1?.on;
    const released = play.step({ do: "release", switch: "S1" }).parts.K1?.on;
    return [before, pressed, released];
  };
  expect(afterwards(pullIn * 0.98)).toEqual([false, true, true]);
  expect(afterwards(dropOut * 1.1)).toEqual([false, true, true]);
  expect(afterwards(dropOut * 0.9)).toEqual([false, true, false]);
});

test("a relay of which nothing is said lets go between 10 and 25 % of nominal (general practice)", () => {
  const { job } = new CircuitBuilder(24).part("relay", "K1");
  const [coil] = setUp(job, null, {}).wiring.deciders;
  if (coil?.is !== "coil") throw new Error("the relay has no coil");
  expect(coil.pullIn / 24).toBeCloseTo(0.75, 9);
  expect(coil.dropOut / 24).toBeGreaterThanOrEqual(0.1);
  expect(coil.dropOut / 24).toBeLessThanOrEqual(0.25);
});

test("a suppression diode rests with its cathode at 86 positive, and shorts the feed the other way", () => {
  // DIN 72552 practice: with a suppression diode the cathode is at 86, so 86 is positive
  const blown = (plus: "85" | "86") =>
    solveCircuit(
      new CircuitBuilder(24)
        .part("battery", "G1")
        .part("fuse", "F1", { amps: 10 })
        .part("relay", "K1", { diodeCathode: "86" })
        .wire("G1:+ F1:1", `F1:2 K1:${plus}`, `K1:${plus === "86" ? "85" : "86"} G1:-`).job,
      null,
      {},
    ).blown;
  expect([blown("86"), blown("85")]).toEqual([[], ["F1"]]);
});

test("a battery of which nothing is said stands as a charged one does at rest", () => {
  // US Army TM 5-2420-230-24-1: 25.2 V; BCI: 12.45 to 12.65 V are 75 to 100 %
  expect(kindOf("battery").defaults(24)).toMatchObject({ volts: 25.2 });
  const twelve = new CircuitBuilder(12).part("battery", "G1").job;
  const volts = solveCircuit(twelve, null, {}).volts("battery+", "battery-") ?? 0;
  expect(volts).toBeGreaterThanOrEqual(12.45);
  expect(volts).toBeLessThanOrEqual(12.65);
});
