import { expect, test } from "vitest";
import { judgeReading } from "../../src/readings/index.ts";
import { lampModule, matched, onMachine, reading } from "../support/check-example.ts";

/** What a module's pin with lamps on it should show, plugged in or unplugged. */
function atLamps(watts: number, unplugged: readonly string[]) {
  const circuit = lampModule()
    .part("lamp", "P2", { watts })
    .part("lamp", "P3", { watts })
    .wire("A1:3 P2:1", "P2:2 GND1:1", "A1:3 P3:1", "P3:2 GND1:1");
  const one = reading("R1", 24.6, { red: "X1:3", when: { unplugged: [...unplugged] } });
  return judgeReading(onMachine(matched(circuit), { readings: [one] }), "machine1", one);
}

test("a cold lamp of a tenth of an ohm says nothing of whether its module has switched it on", () => {
  for (const watts of [5, 21, 70]) {
    expect(atLamps(watts, []), `${watts} W`).toMatchObject({
      predicted: null,
      verdict: "not-comparable",
    });
    // with the module off nothing feeds them
    expect(atLamps(watts, ["A1"]), `${watts} W`).toMatchObject({ verdict: "outside" });
  }
});
