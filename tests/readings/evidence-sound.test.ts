import fc from "fast-check";
import { expect, test } from "vitest";
import { type Random, seededRandom } from "../../src/base/index.ts";
import { checkJob } from "../../src/check/index.ts";
import type { Job, Reading, RoleName, When } from "../../src/job/index.ts";
import {
  expectedAt,
  meterEvidence,
  predict,
  presenceContradicts,
  type ReadingSetup,
  settle,
} from "../../src/readings/index.ts";
import { type PaperRole, rolesOf } from "../../src/roles/index.ts";
import { faultyMachine } from "../support/faulty-machine.ts";
import { randomCircuit } from "../support/random-circuit.ts";
import { randomMachine, randomWhen } from "../support/random-machine.ts";
import "../support/seed.ts";

const seed = fc.integer({ min: 0, max: 2 ** 31 });

/** Faults that take something away: what they leave is all that the machine was drawn with. */
const TAKES_AWAY = / open$|Ω in |Ω at |Ω between |lifted$|Ω under |parted$|pulls in at 5$/;

/** A drawing whose module A1 is tied to a plug, pin by pin. */
function drawn(random: Random): Job | null {
  const job = random.chance(0.6) ? randomCircuit(random) : randomMachine(random);
  const module = job.diagram.parts.find((part) => part.kind === "module" && part.id === "A1");
  if (module?.kind !== "module") return null;
  job.plugs.push({
    id: "X1",
    side: "mating",
    cavities: module.pins.map(({ id }) => ({ mark: id, at: [0, 0] })),
  });
  for (const { id } of module.pins) job.links.push({ pin: `A1:${id}`, cavity: `X1:${id}` });
  // a second load or lamp on some pin's wire: company that may be taken for a feed or a ground
  if (random.chance(0.5)) {
    const grounded = module.pins.filter(({ id }) => isGrounded(job, `A1:${id}`));
    const { id } = random.pick(grounded.length > 0 ? grounded : module.pins);
    const part = { kind: "lamp", id: "PX", sheet: "sheet1", at: [0, 0], turn: 0, watts: 70 };
    job.diagram.parts.push(part as never);
    const [near, far] = random.chance(0.5) ? ["G1:+", `A1:${id}`] : [`A1:${id}`, "G1:-"];
    job.diagram.wires.push(
      { id: "WXa", from: near as string, to: "PX:1" },
      { id: "WXb", from: "PX:2", to: far as string },
    );
  }
  // across a dead short everything stands at any volts, until its fuse blows or its wire burns
  const isShorted = checkJob(job, "machine1").findings.some(({ rule }) => rule === "dead-short");
  return isShorted ? null : settle(job);
}

/** All that is drawn to the lamp's pin has come off it, and only the lamp is left; null without one. */
function comeOff(job: Job): { job: Job; did: string } | null {
  const lamp = job.diagram.wires.filter(({ id }) => id.startsWith("WX"));
  const pin = lamp.flatMap(({ from, to }) => [from, to]).find((ref) => ref.startsWith("A1:"));
  if (pin === undefined) return null;
  const wires = job.diagram.wires.filter(
    (wire) => lamp.includes(wire) || (wire.from !== pin && wire.to !== pin),
  );
  return { job: { ...job, diagram: { ...job.diagram, wires } }, did: `all but PX at ${pin} open` };
}

const isGrounded = (job: Job, pin: string): boolean =>
  job.diagram.wires.some(({ from, to }) => {
    const far = from === pin ? to : to === pin ? from : "";
    const part = job.diagram.parts.find(({ id }) => far.startsWith(`${id}:`));
    return part?.kind === "ground";
  });

function someSetup(random: Random, job: Job, cavity: string): ReadingSetup {
  const own = randomWhen(random, job);
  const when: When = {
    ...own,
    switches: random.chance(0.4) ? {} : own.switches,
    unplugged: [...new Set([...(own.unplugged ?? []), "A1"])],
  };
  const black = random.pick(["chassis", "battery-", "chassis"]);
  switch (random.below(3)) {
    case 0:
      return { quantity: "volts", with: "test-lamp", red: cavity, black, when };
    case 1:
      return { quantity: "volts", with: "test-lamp", red: "battery+", black: cavity, when };
    default: {
      const removed = [...new Set([...(when.removed ?? []), "G1"])];
      return { quantity: "ohms", red: cavity, black, when: { ...when, removed } };
    }
  }
}

/** Readings of the machine as it is, as somebody takes them who goes by the drawing. */
function taken(random: Random, machine: Job, cavity: string, many: number): Reading[] {
  return Array.from({ length: many }, (_, n): Reading[] => {
    const setup = someSetup(random, machine, cavity);
    const { predicted } = predict(machine, "machine1", setup);
    return predicted === null ? [] : [{ id: `R${n + 1}`, value: predicted, ...setup }];
  }).flat();
}

const withReadings = (job: Job, readings: Reading[]): Job => ({
  ...job,
  machines: job.machines.map((one) => ({ ...one, readings })),
});

/** Of a pin that a wire leads to somewhere, "not used" is only the circuit's last word: a charger, say. */
const rolesAt = (job: Job): readonly PaperRole[] =>
  rolesOf(job, "machine1").filter(
    ({ cavity, pin, fits }) =>
      cavity !== null &&
      (fits[0] !== "unused" ||
        !job.diagram.wires.some(({ from, to }) => from === pin || to === pin)),
  );

/** Some role that the drawing allows there is left. */
const isLeft = (fits: readonly RoleName[], role: PaperRole): boolean =>
  role.fits.some((one) => fits.includes(one));

test("no reading of a machine with nothing added ever rules out what the pin is", () => {
  let shown = 0;
  let faulted = 0;
  const ruledOut = new Map<RoleName, number>();
  fc.assert(
    fc.property(seed, (from) => {
      const random = seededRandom(from);
      const job = drawn(random);
      if (!job) return;
      const roles = rolesAt(job);
      for (let n = 0; n < 3; n++) {
        const fault = n === 0 ? null : n === 1 ? faultyMachine(random, job) : comeOff(job);
        if (fault) settle(fault.job);
        if (n > 0 && (!fault || !TAKES_AWAY.test(fault.did))) continue;
        for (const role of roles) {
          const cavity = role.cavity as string;
          const readings = taken(random, fault?.job ?? job, cavity, 4);
          const found = meterEvidence(withReadings(job, readings), "machine1", cavity);
          const about = `${fault?.did ?? "healthy"}: ${role.fits} at ${cavity}, ruled out ${JSON.stringify(found.ruledOut)}`;
          expect(isLeft(found.fits, role), about).toBe(true);
          if (found.confirmedBy.length > 0) shown++;
          if (found.confirmedBy.length > 0 && fault) faulted++;
          for (const { role: out } of found.ruledOut)
            ruledOut.set(out, (ruledOut.get(out) ?? 0) + 1);
        }
      }
    }),
    { numRuns: 30 },
  );
  expect(shown).toBeGreaterThan(50);
  expect(faulted).toBeGreaterThan(10);
  expect(ruledOut.get("ground") ?? 0).toBeGreaterThan(10);
  expect(ruledOut.get("supply") ?? 0).toBeGreaterThan(5);
}, 300_000);

test("a reading worth taking that comes out as it should rules out nothing that the circuit allows", () => {
  let offered = 0;
  fc.assert(
    fc.property(seed, (from) => {
      const random = seededRandom(from);
      const job = drawn(random);
      if (!job) return;
      for (const role of rolesAt(job)) {
        const cavity = role.cavity as string;
        for (const { setup, predicted } of expectedAt(job, "machine1", cavity)) {
          if (predicted === null) continue;
          offered++;
          const own: Reading = { id: "R1", value: predicted, ...setup };
          const found = meterEvidence(withReadings(job, [own]), "machine1", cavity);
          expect(
            isLeft(found.fits, role),
            `${role.fits}: ${JSON.stringify([own, found.ruledOut])}`,
          ).toBe(true);
          // and no word is contradicted that the circuit proves
          for (const word of ["ground", "supply", "switched-supply"] as const) {
            if (presenceContradicts(job, "machine1", own, word, cavity) === null) continue;
            const isIt = role.fits.length === 1 && role.fits[0] === word;
            expect(isIt, `${word}: ${JSON.stringify(own)}`).toBe(false);
          }
        }
      }
    }),
    { numRuns: 20 },
  );
  expect(offered).toBeGreaterThan(100);
}, 300_000);
