import { CircuitBuilder } from "../../support/circuit-builder.ts";
import type { PublishedPin, Standard } from "./published-pin.ts";

/**
 * The trailer as the towing vehicle's end A1 sees it: behind each pin its load, and from there back
 * to the ground pin that the standard gives it. Nothing is tied to the trailer's frame.
 */
export function trailer({ volts, pins }: Standard): CircuitBuilder {
  const circuit = new CircuitBuilder(volts);
  const lines = pins.filter(({ carries }) => carries === "data");
  const dataGround = lines.find(({ back }) => back !== null)?.back;
  if (lines.length > 0) {
    circuit.part("module", "A2", { pins: ["1", "2", "3"].map((id) => ({ id })) });
    for (const [index, { mark }] of lines.entries()) circuit.wire(`A1:${mark} A2:${index + 1}`);
    if (dataGround) circuit.wire(`A1:${dataGround} A2:3`);
  }
  for (const pin of pins) if (pin.back !== null && pin.carries !== "data") behind(circuit, pin);
  return circuit;
}

function behind(circuit: CircuitBuilder, { mark, carries, back }: PublishedPin): CircuitBuilder {
  const own = `A1:${mark}`;
  const home = `A1:${back}`;
  const load = `L_${mark}`;
  const between = (from = own) => circuit.wire(`${from} ${load}:1`, `${load}:2 ${home}`);
  switch (carries) {
    case "lamp":
    case "turn":
    case "tail":
    case "stop":
    case "reversing":
      circuit.part("lamp", load, { watts: 21 });
      return between();
    case "valve":
      circuit.part("solenoid", load, { ohms: 20 });
      return between();
    case "permanent":
    case "ignition":
      circuit.part("heater", load, { ohms: 6 });
      return between();
    case "charge":
      return circuit
        .part("battery", "G2")
        .part("fuse", "F_G2", { amps: 15 })
        .wire(`G2:+ F_G2:1`, `F_G2:2 ${own}`, `G2:- ${home}`);
    case "code":
      return circuit.wire(`${own} ${home}`);
    case "wear":
      circuit.contact(load, "limit");
      return between();
    case "pressure":
      circuit.part("sender", load, { ohmsMin: 10, ohmsMax: 180 });
      return between();
    case "electronics":
      circuit.part("relay", "KABS", { coilOhms: 300 });
      return circuit.wire(`${own} KABS:86`, `KABS:85 ${home}`);
    case "warning":
      return circuit.wire(`${own} KABS:30`, `KABS:87a ${home}`);
    default:
      return circuit;
  }
}
