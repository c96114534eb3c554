import { act } from "react";
import { expect, test } from "vitest";
import { DropAlong } from "../../../src/editor/panels/index.ts";
import { createSession } from "../../../src/session/index.ts";
import { CircuitBuilder } from "../../support/circuit-builder.ts";
import { show } from "../support/screen.tsx";

const machine = () => {
  const { job } = new CircuitBuilder(24)
    .part("battery", "G1", { volts: 24, ohms: 0 })
    .part("fuse", "F1", { amps: 20, label: "pump" })
    .contact("S1", "operator")
    .part("heater", "E1", { ohms: 2 })
    .part("heater", "E2", { ohms: 2 })
    .wire("G1:+ F1:1", "F1:2 S1:1", "S1:2 E1:1", "E1:2 G1:-");
  for (const wire of job.diagram.wires) Object.assign(wire, { mm2: 2.5, metres: 2 });
  job.machines[0]?.readings.push({
    id: "R1",
    quantity: "drop",
    red: "S1:1",
    black: "S1:2",
    value: 1.4,
    when: { switches: { S1: "worked" } },
  });
  return job;
};

async function opened(of: string): Promise<string> {
  const session = createSession("k", machine());
  const page = await show(session, <DropAlong of={of} />);
  expect(page.querySelector("ol")).toBeNull();
  const details = page.querySelector("details") as HTMLDetailsElement;
  await act(async () => {
    details.open = true;
    details.dispatchEvent(new Event("toggle"));
  });
  return page.textContent ?? "";
}

test("it names the state, each leg with its usual limit, and a drop that was read", async () => {
  const text = await opened("E1");
  expect(text).toContain("With S1 at worked");
  expect(text).toContain("This state will move or bring on E1");
  expect(text).toMatch(/Fuse F1 pump.*usual limit 0\.10 V \(a high-current connection\)/);
  expect(text).toMatch(/Switch S1.*usual limit 0\.30 V.*R1 read 1\.40 V: more than usual/);
  expect(text).toMatch(/Ground path W4/);
  expect(text).toContain("attributed to SAE, common practice");
  expect(text).toContain("A drop is measured with the current flowing");
});

test("what no position feeds says so", async () => {
  expect(await opened("E2")).toContain("In no position of the switches");
});
