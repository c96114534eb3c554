import fc from "fast-check";
import { expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import {
  between,
  createPlay,
  decide,
  held,
  influenceOf,
  type OperatingPoint,
  setUp,
  type Wiring,
  wire,
} from "../../../src/circuit/index.ts";
import { reachOfUnknowns } from "../../../src/circuit/play/unknown-reach.ts";
import type { Job, When } from "../../../src/job/index.ts";
import { withBattery } from "../../support/circuit-builder.ts";
import { slowInfluence } from "../../support/slow-influence.ts";
import { randomMachine, randomStep } from "./random-machine.ts";
import "../../support/seed.ts";

const seeds = fc.integer({ min: 0, max: 2 ** 31 });

/** The plainest way to follow a machine without timers: blown fuses are taken out of it by hand. */
class SlowPlay {
  readonly job: Job;
  states: ReadonlyMap<string, boolean> = new Map();
  readonly blown = new Set<string>();

  constructor(job: Job) {
    this.job = job;
  }

  /** Null where it does not come to rest. */
  rest(when: When): { wiring: Wiring; point: OperatingPoint } | null {
    for (;;) {
      const removed = [...(when.removed ?? []), ...this.blown];
      const wiring = wire(structuredClone(this.job), null, { ...when, removed });
      let point = held(wiring, this.states, []);
      for (let round = 0; ; round++) {
        if (round === 100) return null;
        const next = new Map(
          wiring.deciders.map((one) => [
            one.id,
            decide(one, point, this.states, wiring.systemVoltage),
          ]),
        );
        if ([...next].every(([id, on]) => on === (this.states.get(id) ?? false))) break;
        this.states = next;
        point = held(wiring, this.states, []);
      }
      let worst: string | null = null;
      let times = 1.35;
      wiring.branches.forEach(({ element, owner }, index) => {
        if (element?.law.is !== "protection") return;
        const own = Math.abs(point.amps[index] as number) / element.law.amps;
        if (own <= times * (1 + 1e-9)) return;
        worst = owner;
        times = own;
      });
      if (worst === null) return { wiring, point };
      this.blown.add(worst);
    }
  }
}

test("machines without timers do what following them by hand leads to", () => {
  let compared = 0;
  fc.assert(
    fc.property(seeds, (seed) => {
      const random = seededRandom(seed);
      const job = randomMachine(random, { memory: false, unsaid: false });
      const play = createPlay(job, null);
      const slow = new SlowPlay(job);
      let state = play.state();
      for (let n = 0; n < 12; n++) {
        const wanted = slow.rest(state.when);
        if (!wanted) {
          // a fuse may have opened in what chatters, and ended it
          const blew = state.events.some(({ what }) => what === "blew");
          expect(blew || state.oscillating.length > 0).toBe(true);
          return;
        }
        expect(state.oscillating).toEqual([]);
        const { wiring, point } = wanted;
        for (const part of job.diagram.parts) {
          expect(state.parts[part.id]?.blown ?? false).toBe(slow.blown.has(part.id));
          if (part.kind === "relay")
            expect(state.parts[part.id]?.on).toBe(slow.states.get(part.id) ?? false);
        }
        for (const [pin, { volts }] of Object.entries(state.pins)) {
          const red = wiring.probe(pin);
          const black = wiring.probe("chassis");
          // a blown fuse is in its place; taken out by hand its pins are the harness's all the same
          if (!red.ok || !black.ok) continue;
          const minus = wiring.grounds[0] as number;
          const own = between(point, red.node, black.node) ?? between(point, red.node, minus);
          compared++;
          if (own === null || volts === null) expect(volts).toBe(own);
          else expect(Math.abs(volts - own)).toBeLessThan(1e-4);
        }
        const step = randomStep(random, job);
        state = play.step(step);
        if (step.do === "fit" && state.refused === null) slow.blown.delete(step.id);
      }
    }),
    { numRuns: 40 },
  );
  expect(compared).toBeGreaterThan(1500);
});

test("what depends on an unknown is what whole solutions find, for every node", () => {
  let dependent = 0;
  fc.assert(
    fc.property(seeds, (seed) => {
      const random = seededRandom(seed);
      const job = randomMachine(random, { memory: true, unsaid: true });
      const switches: Record<string, string> = {};
      for (const part of job.diagram.parts) {
        if (part.kind === "switch" && random.chance(0.6))
          switches[part.id] = random.pick(part.positions);
      }
      const { wiring, doubts } = setUp(job, null, { switches });
      const { point, unknowns } = doubts;
      const reach = reachOfUnknowns(wiring, point, unknowns);
      const influence = influenceOf(point, unknowns);
      const { piece } = influence;
      const slow = slowInfluence(wiring.branches, point, unknowns);
      const grounded = wiring.grounds.map((node) => piece[node] as number);
      for (let node = 0; node < wiring.nodeCount; node++) {
        const own = piece[node] as number;
        const references = grounded.includes(own) ? [influence.referenceOf(own)] : wiring.grounds;
        const wanted = references.some((reference) => slow(node, reference).length > 0);
        if (wanted) dependent++;
        expect(reach.isUnknown[node] === 1).toBe(wanted);
      }
    }),
    { numRuns: 60 },
  );
  expect(dependent).toBeGreaterThan(200);
});

/** A dead bus with so many lines on it that they make one large island, an unsaid module on some. */
function deadBus(lines: number, modules: number): Job {
  const circuit = withBattery().contact("S1", "isolator").part("splice", "X0").wire("G1:+ S1:1");
  circuit.wire("S1:2 X0:1");
  for (let n = 1; n <= lines; n++) {
    circuit
      .part("resistor", `R${n}`, { ohms: 3 + (n % 5) })
      .part("resistor", `E${n}`, { ohms: n % 3 === 0 ? 0.2 : 20 + n })
      .wire(`X0:1 R${n}:1`, `R${n}:2 E${n}:1`, `E${n}:2 GND1:1`);
    if (n > modules) continue;
    circuit.module(`A${n}`, { "1": null, "2": null });
    circuit.wire(`A${n}:1 E${n}:1`, `A${n}:2 GND1:1`);
  }
  return circuit.job;
}

test("lines that hang together in one large island are told apart all the same", () => {
  for (const [lines, modules] of [
    [70, 30],
    [90, 80],
  ] as const) {
    const { wiring, doubts } = setUp(deadBus(lines, modules), null, {});
    const { point, unknowns } = doubts;
    const slow = slowInfluence(wiring.branches, point, unknowns);
    const { isUnknown } = reachOfUnknowns(wiring, point, unknowns);
    const chassis = wiring.grounds.at(-1) as number;
    let [found, missed, more] = [0, 0, 0];
    for (let node = 0; node < wiring.nodeCount; node++) {
      const wanted = slow(node, chassis).length > 0;
      if (isUnknown[node]) found++;
      if (wanted && !isUnknown[node]) missed++;
      if (!wanted && isUnknown[node]) more++;
    }
    expect(found).toBeGreaterThan(modules / 2);
    expect(missed).toBe(0);
    expect(more).toBe(0);
  }
});
