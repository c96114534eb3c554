import type { Job, Reading } from "../../src/job/index.ts";
import { type CircuitBuilder, withBattery } from "./circuit-builder.ts";

/** A1 behind a plug with four cavities in a row: a fused feed, a ground, a lamp and a valve, each with its colour. */
export function fourWays(): CircuitBuilder {
  const circuit = withBattery()
    .module("A1", { "1": null, "2": null, "3": null, "4": null })
    .part("fuse", "F1", { amps: 10 })
    .part("ground", "GND2")
    .part("lamp", "P1", { watts: 5 })
    .part("solenoid", "Y1", { ohms: 20 })
    .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND2:1", "A1:3 P1:1", "P1:2 GND1:1")
    .wire("A1:4 Y1:1", "Y1:2 GND1:1");
  const { job } = circuit;
  for (const [pin, base] of Object.entries({ "1": "RD", "2": "BK", "3": "YE", "4": "BU" } as const))
    for (const wire of job.diagram.wires)
      if (wire.from === `A1:${pin}` || wire.to === `A1:${pin}`) wire.colour = { base };
  job.plugs.push({
    id: "X1",
    side: "wire",
    cavities: ["1", "2", "3", "4"].map((mark, index) => ({ mark, at: [index * 5, 0] })),
  });
  for (const mark of ["1", "2", "3", "4"])
    job.links.push({ pin: `A1:${mark}`, cavity: `X1:${mark}` });
  return circuit;
}

/** Volts at a cavity to chassis, module unplugged. */
export const volts = (cavity: string, value: number): Reading => ({
  id: `V${cavity}`,
  quantity: "volts",
  red: `X1:${cavity}`,
  black: "chassis",
  value,
  when: { unplugged: ["A1"] },
});

/** Ohms from a cavity to chassis, module unplugged, battery off. */
export const ohms = (cavity: string, value: Reading["value"]): Reading => ({
  id: `O${cavity}`,
  quantity: "ohms",
  red: `X1:${cavity}`,
  black: "chassis",
  value,
  when: { unplugged: ["A1"], removed: ["G1"] },
});

/** The four-way plug with these readings on its machine, and colours found at cavities. */
export function measuredAs(
  readings: readonly Reading[],
  colours: Readonly<Record<string, "RD" | "BK" | "YE" | "BU">> = {},
  circuit = fourWays(),
): Job {
  const [machine] = circuit.job.machines;
  if (!machine) throw new Error("a built job has a machine");
  machine.readings = [...readings];
  machine.wires = Object.entries(colours).map(([mark, base]) => ({
    cavity: `X1:${mark}`,
    colour: { base },
  }));
  return circuit.job;
}
