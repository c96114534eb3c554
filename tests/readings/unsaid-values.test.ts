import fc from "fast-check";
import { expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import type { Job, PinRef } from "../../src/job/index.ts";
import { judgeReading, predict, type ReadingSetup } from "../../src/readings/index.ts";
import { withBattery } from "../support/circuit-builder.ts";
import { loadedMachine } from "../support/healthy-machine.ts";

/** Ω of a part on its own, off the machine. */
const onBench = (id: string, [a, b]: readonly [string, string]) => ({
  quantity: "ohms" as const,
  red: `${id}:${a}`,
  black: `${id}:${b}`,
  when: { removed: [id] },
});

/** Ω of a bulb at 24 V: hot V²/W, cold a tenth of it (common practice, no source). */
const cold = (watts: number) => 24 ** 2 / watts / 10;

const bandOf = (
  kind: "lamp" | "relay" | "solenoid" | "motor" | "resistor" | "sender" | "potentiometer",
  fields: object = {},
  ends: readonly [string, string] = ["1", "2"],
) => {
  const { job } = withBattery().part(kind, "P1", fields);
  const { low, high } = predict(job, "machine1", onBench("P1", ends));
  return [low ?? Number.NaN, high ?? Number.NaN] as const;
};

const expectWithin = (ohms: number, [low, high]: readonly [number, number]) => {
  expect(low).toBeLessThan(ohms);
  expect(high).toBeGreaterThan(ohms);
};

test("a lamp without its watts may be a small one or a large one", () => {
  for (const watts of [2, 5, 21, 70]) expectWithin(cold(watts), bandOf("lamp"));
  const [low, high] = bandOf("lamp", { watts: 21 });
  expect(low).toBeGreaterThan(cold(70));
  expect(high).toBeLessThan(cold(2));
});

test("and so may whatever else has no value", () => {
  for (const ohms of [40, 320, 1600]) expectWithin(ohms, bandOf("relay", {}, ["85", "86"]));
  for (const ohms of [2, 29, 300]) expectWithin(ohms, bandOf("solenoid"));
  for (const ohms of [0.4, 10, 200]) expectWithin(ohms, bandOf("motor"));
  for (const ohms of [1.5, 120, 10_000]) expectWithin(ohms, bandOf("resistor"));
  for (const ohms of [3, 240, 2500]) expectWithin(ohms, bandOf("sender"));
  for (const ohms of [1000, 5000, 10_000]) expectWithin(ohms, bandOf("potentiometer"));
});

/** A relay in series with a resistor: whether it pulls in only the resistor's ohms say. */
const inSeries = (ohms?: number) =>
  withBattery()
    .part("resistor", "R1", ohms === undefined ? {} : { ohms })
    .part("relay", "K1", { coilOhms: 320 })
    .part("lamp", "P1", { watts: 5 })
    .wire("G1:+ R1:1", "R1:2 K1:86", "K1:85 GND1:1")
    .wire("G1:+ K1:30", "K1:87 P1:1", "P1:2 GND1:1").job;

const atLamp = { quantity: "volts", red: "P1:1", black: "chassis", when: {} } as const;

test("what lies behind a relay is not told where only an unsaid value says how the relay lies", () => {
  expect(predict(inSeries(), "machine1", atLamp).predicted).toBeNull();
  expect(predict(inSeries(), "machine1", atLamp).uncertain).toMatch(/R1/);
  expect(predict(inSeries(10), "machine1", atLamp).predicted).toBeGreaterThan(24);
  expect(predict(inSeries(5000), "machine1", atLamp).predicted).toBeLessThan(1);
});

test("a relay that is fed straight is told whatever its coil and the lamps beside it have", () => {
  const { job } = withBattery()
    .part("relay", "K1")
    .part("lamp", "P1")
    .part("lamp", "P2")
    .part("motor", "M1")
    .wire("G1:+ K1:86", "K1:85 GND1:1", "G1:+ K1:30", "K1:87 P1:1", "P1:2 GND1:1")
    .wire("G1:+ P2:1", "P2:2 GND1:1", "G1:+ M1:1", "M1:2 GND1:1");
  const found = predict(job, "machine1", atLamp);
  expect(found.predicted).toBeGreaterThan(22);
  expect(found.low).toBeGreaterThan(1);
});

test("an open circuit is one whatever the value", () => {
  const { job } = withBattery().part("lamp", "P1");
  const found = predict(job, "machine1", {
    quantity: "ohms",
    red: "P1:1",
    black: "chassis",
    when: { removed: ["G1"] },
  });
  expect(found.predicted).toBe("OL");
});

const VALUES: ReadonlySet<string> = new Set(["watts", "ohms", "coilOhms", "ohmsMin", "ohmsMax"]);

/** The same machine, and nobody has said what its loads have. */
const withoutValues = (job: Job): Job => ({
  ...job,
  diagram: {
    ...job.diagram,
    parts: job.diagram.parts.map((part) =>
      part.kind === "battery"
        ? part
        : (Object.fromEntries(
            Object.entries(part).filter(([field]) => !VALUES.has(field)),
          ) as typeof part),
    ),
  },
});

test("what a machine of known values shows is never off on the same machine without them", () => {
  let compared = 0;
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 31 }), (seed) => {
      const random = seededRandom(seed);
      const { job, points, loads } = loadedMachine(random);
      const bare = withoutValues(job);
      const worked = { switches: { S1: "worked" } };
      const setups: ReadingSetup[] = [
        ...points.map((red) => ({
          quantity: "volts" as const,
          red: red as PinRef,
          black: "chassis" as const,
          when: worked,
          ...(random.chance(0.3) ? { with: "test-lamp" as const } : {}),
        })),
        { quantity: "amps", red: "F1:1", black: "F1:2", when: { ...worked, removed: ["F1"] } },
        ...loads.map((id) => {
          const [a, b] = id.startsWith("K") ? ["86", "85"] : ["1", "2"];
          return {
            quantity: "ohms" as const,
            red: `${id}:${a}` as PinRef,
            black: `${id}:${b}` as PinRef,
            when: { removed: ["G1"] },
          };
        }),
      ];
      for (const setup of setups) {
        const { predicted } = predict(job, "machine1", setup);
        if (predicted === null) continue;
        const { verdict } = judgeReading(bare, "machine1", {
          id: "R1",
          ...setup,
          value: predicted,
        });
        expect(verdict, JSON.stringify(setup)).not.toBe("outside");
        expect(verdict, JSON.stringify(setup)).not.toBe("invalid");
        if (verdict === "inside") compared++;
      }
    }),
    { numRuns: 60 },
  );
  expect(compared).toBeGreaterThan(200);
});
