import { expect, test } from "vitest";
import { rolesOf } from "../../src/roles/index.ts";
import { type CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

const fitsOf = (circuit: CircuitBuilder, pin: string) =>
  rolesOf(circuit.job, "machine1").find((role) => role.pin === pin)?.fits;

test("a relay whose contact only shares its coil's feed has no memory of its own", () => {
  const circuit = withBattery()
    .module("A1", { "1": null, "2": null })
    .key("S1")
    .contact("S2", "pressure", {
      contacts: [{ between: ["1", "2"], closedIn: ["rest"] }],
    })
    .part("fuse", "F1")
    .part("relay", "K1")
    .wire("G1:+ F1:1", "F1:2 S1:30", "S1:15 K1:86", "K1:85 S2:1", "S2:2 GND1:1")
    .wire("F1:2 K1:30", "K1:87a A1:1", "F1:2 A1:2");
  // Key off, or the pressure switch open: either alone lets it drop out.
  expect(fitsOf(circuit, "A1:1")).toEqual(["switched-supply", "input"]);
});

test("a relay that holds itself is commanded by what starts it and by what holds it", () => {
  const circuit = withBattery()
    .module("A1", { "1": null, "2": null })
    .key("S1")
    .contact("S2", "operator", { springReturn: true })
    .part("fuse", "F1")
    .part("relay", "K1")
    .part("splice", "SP1")
    .wire("G1:+ F1:1", "F1:2 S1:30", "S1:15 S2:1", "S2:2 SP1:1", "SP1:1 K1:86", "K1:85 GND1:1")
    .wire("S1:15 K1:30", "K1:87 SP1:1", "SP1:1 A1:1", "F1:2 A1:2");
  expect(fitsOf(circuit, "A1:1")).toContain("input");
  expect(fitsOf(circuit, "A1:1")).not.toContain("ground");
});
