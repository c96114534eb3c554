import { type CircuitBuilder, withBattery } from "../../support/circuit-builder.ts";
import type { PublishedPin, Standard } from "./published-pin.ts";

/**
 * The towing vehicle as the trailer's end A1 sees it: a fused battery and a key, and behind each
 * pin what works it there.
 */
export function towingVehicle({ volts, pins }: Standard): CircuitBuilder {
  const circuit = withBattery(volts)
    .part("fuse", "F1", { amps: 60 })
    .part("splice", "SP1")
    .key("S1")
    .part("fuse", "F2", { amps: 30 })
    .part("splice", "SP2")
    .wire("G1:+ F1:1", "F1:2 SP1:1 S1:30", "S1:15 F2:1", "F2:2 SP2:1");
  if (pins.some(({ carries }) => carries === "tail")) tailRelay(circuit);
  if (pins.some(({ carries }) => carries === "data"))
    circuit.part("module", "A2", { pins: [{ id: "1" }, { id: "2" }] });
  let dataLine = 0;
  for (const pin of pins) {
    if (pin.carries === "data") circuit.wire(`A1:${pin.mark} A2:${++dataLine}`);
    else behind(circuit, pin);
  }
  return circuit;
}

/** Every tail lamp hangs on one relay that the light switch pulls in. */
const tailRelay = (circuit: CircuitBuilder) =>
  circuit
    .contact("SLIGHT", "operator")
    .part("relay", "KLIGHT", { coilOhms: 90 })
    .part("fuse", "FLIGHT", { amps: 20 })
    .part("fuse", "FCOIL", { amps: 5 })
    .part("splice", "SPLIGHT")
    .wire("SP1:1 FCOIL:1", "FCOIL:2 SLIGHT:1", "SLIGHT:2 KLIGHT:86", "KLIGHT:85 GND1:1")
    .wire("SP1:1 FLIGHT:1", "FLIGHT:2 KLIGHT:30", "KLIGHT:87 SPLIGHT:1");

function behind(circuit: CircuitBuilder, { mark, carries }: PublishedPin): CircuitBuilder {
  const own = `A1:${mark}`;
  const [fuse, contact, lamp] = [`F_${mark}`, `S_${mark}`, `P_${mark}`];
  const fused = (from: string, to: string, amps = 10) =>
    circuit.part("fuse", fuse, { amps }).wire(`${from} ${fuse}:1`, `${fuse}:2 ${to}`);
  const worked = (from: string) => {
    fused(from, `${contact}:1`);
    return circuit.contact(contact, "operator");
  };
  const telltale = () => {
    fused("SP2:1", `${lamp}:1`, 5);
    return circuit.part("lamp", lamp, { watts: 2 }).wire(`${lamp}:2 ${own}`);
  };
  switch (carries) {
    case "lamp":
    case "valve":
      return worked("SP1:1").wire(`${contact}:2 ${own}`);
    case "turn":
    case "reversing":
      return worked("SP2:1").wire(`${contact}:2 ${own}`);
    case "stop":
      return worked("SP1:1")
        .part("splice", `SP_${mark}`)
        .part("lamp", lamp, { watts: 21 })
        .wire(`${contact}:2 SP_${mark}:1 ${own}`, `SP_${mark}:1 ${lamp}:1`, `${lamp}:2 GND1:1`);
    case "tail":
      return fused("SPLIGHT:1", own, 5);
    case "permanent":
    case "charge":
      return fused("SP1:1", own, 15);
    case "ignition":
    case "electronics":
      return fused("SP2:1", own, 15);
    case "ground":
      return circuit.part("ground", `GND_${mark}`).wire(`${own} GND_${mark}:1`);
    case "code":
      fused("SP1:1", "KCODE:30", 5);
      return circuit
        .part("relay", "KCODE", { coilOhms: 90 })
        .part("lamp", lamp, { watts: 2 })
        .wire("KCODE:30 KCODE:86", `KCODE:85 ${own}`, `KCODE:87 ${lamp}:1`, `${lamp}:2 GND1:1`);
    case "wear":
    case "pressure":
    case "warning":
      return telltale();
    default:
      return circuit;
  }
}
