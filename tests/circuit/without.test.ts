/**
 * A machine with something unplugged or taken out is made of the whole one. Held against the same
 * machine put together from nothing.
 */
import fc from "fast-check";
import { expect, test, vi } from "vitest";
import { type Random, seededRandom } from "../../src/base/index.ts";
import { follow, held, pinsOf, type Wiring, wire } from "../../src/circuit/index.ts";
import { planElimination, withMoved } from "../../src/circuit/solve/elimination-plan.ts";
import {
  changedMesh,
  meshOf,
  piecesOf,
  voltsOf,
  Workspace,
} from "../../src/circuit/solve/star-mesh.ts";
import { readyAfresh, wiringOf } from "../../src/circuit/solve/wiring.ts";
import { cavityRef, type Job, pinRef, type When } from "../../src/job/index.ts";
import { voltsBand } from "../../src/readings/band.ts";
import { pluggedBigJob } from "../support/plugged-big-job.ts";
import { randomCircuit } from "../support/random-circuit.ts";
import { randomJob } from "../support/random-job.ts";
import "../support/seed.ts";

vi.setConfig({ testTimeout: 120_000 });

const JOINTS = ["ideal", "real"] as const;

/** Some state with something out. */
function someWhen(job: Job, random: Random): When {
  const when: When = {};
  for (const part of job.diagram.parts)
    if (part.kind === "switch" && random.chance(0.5))
      when.switches = { ...when.switches, [part.id]: random.pick(part.positions) };
  const ids = job.diagram.parts.map(({ id }) => id);
  when.removed = Array.from({ length: 1 + random.below(3) }, () => random.pick(ids));
  const plugs = job.plugs.map(({ id }) => id);
  if (plugs.length > 0 && random.chance(0.5)) when.unplugged = [random.pick(plugs)];
  if (random.chance(0.3)) when.engine = random.pick(["running", "cranking"] as const);
  return when;
}

function afresh(job: Job, when: When, joints: (typeof JOINTS)[number]): Wiring {
  const out = [...new Set([...(when.unplugged ?? []), ...(when.removed ?? [])])].sort();
  const frame = { engine: when.engine ?? ("off" as const), out, joints, faults: [] };
  return wiringOf(readyAfresh(job, null, frame), job, when);
}

/** Every place that a probe can go to, on either side of a parted joint. */
const placesOf = (job: Job) => [
  "chassis",
  "battery+",
  "battery-",
  ...job.diagram.parts.flatMap((part) => pinsOf(part).map(({ id }) => pinRef(part.id, id))),
  ...job.plugs.flatMap(({ id, cavities }) => cavities.map(({ mark }) => cavityRef(id, mark))),
];

const close = (found: number, wanted: number) =>
  Object.is(found, wanted) || Math.abs(found - wanted) <= 1e-6 * (1 + Math.abs(wanted));

/** Number of voltages compared. */
function compare(job: Job, when: When): number {
  let compared = 0;
  for (const joints of JOINTS) {
    const made = wire(job, null, when, joints);
    const wanted = afresh(job, when, joints);
    expect(made.problems).toEqual(wanted.problems);
    expect(made.deciders.map(({ id }) => id)).toEqual(wanted.deciders.map(({ id }) => id));
    expect(made.branches.map(({ owner, acts }) => [owner, acts])).toEqual(
      wanted.branches.map(({ owner, acts }) => [owner, acts]),
    );
    expect(made.unknowns.map(({ what, nodes }) => [what, nodes.length])).toEqual(
      wanted.unknowns.map(({ what, nodes }) => [what, nodes.length]),
    );
    const [one, other] = [follow(made), follow(wanted)];
    expect(one.states).toEqual(other.states);
    expect(one.oscillating).toEqual(other.oscillating);
    const quiet = [
      held(made, one.states, [], null, true),
      held(wanted, other.states, [], null, true),
    ] as const;
    // node of the one by node of the other: the same places are one node, and hang together alike
    const nodes = new Map<number, number>();
    for (const place of placesOf(job)) {
      for (const side of ["harness", "own"] as const) {
        const [a, b] = [made.probe(place, side), wanted.probe(place, side)];
        expect(a.ok, `${place} ${side}`).toBe(b.ok);
        if (!a.ok || !b.ok) continue;
        expect(nodes.get(b.node) ?? a.node).toBe(a.node);
        nodes.set(b.node, a.node);
      }
    }
    expect(new Set(nodes.values()).size).toBe(nodes.size);
    const all = [...nodes];
    for (const [mine, its] of [[one.point, other.point], quiet] as const) {
      all.forEach(([b, a], index) => {
        const [far, near] = all[(index + 1) % all.length] ?? [b, a];
        const together = mine.factored.piece[a] === mine.factored.piece[near];
        expect(together).toBe(its.factored.piece[b] === its.factored.piece[far]);
        if (!together) return;
        const across = (volts: Float64Array, x: number, y: number) =>
          (volts[x] ?? 0) - (volts[y] ?? 0);
        const found = across(mine.volts, a, near);
        const should = across(its.volts, b, far);
        expect(close(found, should), `${found} for ${should}`).toBe(true);
        compared++;
      });
    }
    if (joints === "ideal") continue;
    const limits = { battery: null };
    const [[b, a] = [0, 0], [far, near] = [0, 0]] = [all[0], all[Math.floor(all.length / 2)]];
    const found = voltsBand({ wiring: made, states: one.states, limits }, [], a, near, one.point);
    const should = voltsBand(
      { wiring: wanted, states: other.states, limits },
      [],
      b,
      far,
      other.point,
    );
    expect(found === null).toBe(should === null);
    found?.forEach((end, at) => {
      const edge = should?.[at] ?? Number.NaN;
      expect(Math.abs(end - edge), `${end} for ${edge}`).toBeLessThan(1e-4 * (1 + Math.abs(edge)));
    });
  }
  return compared;
}

test("with anything out of it, a machine is the same as put together from nothing", () => {
  let compared = 0;
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 31 }), (seed) => {
      const random = seededRandom(seed);
      const job = randomCircuit(random);
      for (let n = 0; n < 6; n++) compared += compare(job, someWhen(job, random));
    }),
    { numRuns: 30 },
  );
  expect(compared).toBeGreaterThan(3000);
});

test("and so is one that makes no sense", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 ** 31 }), (seed) => {
      const random = seededRandom(seed);
      const job = randomJob(random, { parts: 12, wires: 20, plugs: 2 });
      for (let n = 0; n < 4; n++) compare(job, someWhen(job, random));
    }),
    { numRuns: 30 },
  );
});

test("a large one is made of the whole, and of no other plan", () => {
  const job = pluggedBigJob(400, 4, 1);
  const all = wire(job, null, {});
  const out = wire(job, null, { unplugged: ["A10"] });
  expect(out.branches.filter((branch, index) => branch !== all.branches[index])).toHaveLength(0);
  const without = wire(job, null, { removed: ["P10"] });
  const moved = without.branches.filter((branch, index) => branch !== all.branches[index]);
  expect(moved.map(({ owner }) => owner)).toEqual(["P10"]);
  expect(compare(job, { unplugged: ["XA10"], removed: ["G1"] })).toBeGreaterThan(100);
});

test("nodes that come to a plan and branches that move give, bit for bit, the mesh made afresh", () => {
  const nodeCount = 9;
  const node = fc.nat(nodeCount - 1);
  const siemens = fc.oneof(fc.constant(0), fc.double({ min: 1e-7, max: 1e6, noNaN: true }));
  fc.assert(
    fc.property(
      fc.array(fc.record({ a: node, b: node, siemens }), { minLength: 1, maxLength: 24 }),
      fc.uniqueArray(
        fc.record({
          index: fc.nat(23),
          a: fc.nat(nodeCount + 2),
          b: fc.nat(nodeCount + 2),
        }),
        { maxLength: 5, selector: ({ index }) => index },
      ),
      fc.uniqueArray(node, { maxLength: 2 }),
      (ends, moves, last) => {
        const moved = moves.filter(({ index }) => index < ends.length);
        const values = Float64Array.from(ends, (end) => end.siemens);
        const plan = planElimination(nodeCount, ends, last);
        const next = withMoved(plan, 3, moved);
        const work = new Workspace(nodeCount + 3);
        const indices = moved.map(({ index }) => index);
        const mesh = changedMesh(meshOf(plan, values), next, values, indices, work);
        const fresh = meshOf(next, values);
        expect(mesh.sums).toEqual(fresh.sums);
        expect(mesh.siemens).toEqual(fresh.siemens);
        // and it is the network that it should be
        const now = ends.map((end, index) => moved.find((one) => one.index === index) ?? end);
        const planned = meshOf(planElimination(nodeCount + 3, now, last), values);
        const amps = new Float64Array(nodeCount + 3);
        amps[0] = 1;
        amps[1] = -1;
        const [found, wanted] = [voltsOf(mesh, amps), voltsOf(planned, amps)];
        const across = (volts: Float64Array) => (volts[0] ?? 0) - (volts[1] ?? 0);
        if (piecesAlike(mesh, planned))
          expect(Math.abs(across(found) - across(wanted))).toBeLessThanOrEqual(
            1e-9 * Math.abs(across(wanted)) + 1e-12,
          );
      },
    ),
    { numRuns: 400 },
  );
});

const piecesAlike = (...meshes: readonly ReturnType<typeof meshOf>[]): boolean =>
  meshes.every((mesh) => {
    const { piece } = piecesOf(mesh);
    return piece[0] === piece[1];
  });
