/**
 * Our solver against ngspice on random machines: the same laws of lamps and diodes, relays, modules
 * and fuses pinned as we settled them, and whether that was right told by ngspice's own volts.
 * `PINTRUTH_SEED=123 npx vitest run tests/circuit/ngspice.test.ts` replays a run.
 */
import { afterAll, expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import type { Between, Decider } from "../../src/circuit/index.ts";
import { type Netlist, netlistOf, setUp } from "../../src/circuit/index.ts";
import { type Job, readJobText, type When } from "../../src/job/index.ts";
import { openSpice } from "../support/ngspice.ts";
import { oneChange, pinRefsOf, randomMachine, randomWhen } from "../support/random-machine.ts";

const spice = await openSpice();
afterAll(() => spice?.close());

const MACHINES = 520;
const AT_ONCE = 4;
const SEED = Number(process.env.PINTRUTH_SEED ?? Math.floor(Math.random() * 2 ** 31));

/** Shares of nominal volts at which an input counts as high or low, as the solver has them. */
const HIGH = 0.5;
const LOW = 0.3;

interface Trial {
  readonly seed: number;
  readonly job: Job;
  readonly when: When;
  /** After one change: what the solver remembers of the first state must not show in it. */
  readonly then: When;
  readonly held: readonly Between[];
  readonly joints: "ideal" | "real";
}

/** A tenth have a meter of 10 MΩ held between two pins, as many a test lamp of 3 W. */
function trialOf(seed: number): Trial {
  const random = seededRandom(seed);
  const job = randomMachine(random);
  const when = randomWhen(random, job);
  const then = oneChange(random, job, when);
  const pins = pinRefsOf(job);
  const volts = job.systemVoltage;
  const hot = volts ** 2 / 3;
  const meter = { is: "ohmic", ohms: 10e6, low: 10e6, high: 10e6 } as const;
  const lamp = { is: "filament", hot, cold: hot / 10, ratedVolts: volts, spread: [1, 1] } as const;
  const what = random.below(10);
  const held = [meter, lamp].flatMap((acts, n) =>
    what === n ? [{ red: random.pick(pins), black: random.pick(pins), acts }] : [],
  );
  return { seed, job, when, then, held, joints: random.chance(0.7) ? "ideal" : "real" };
}

const allowed = (volts: number) => Math.max(1e-3, 1e-3 * Math.abs(volts));

/**
 * What ngspice finds. Its search goes round in circles on one machine in tens of thousands; such a
 * one is begun again from our volts, which it keeps only where they satisfy its own equations.
 */
async function spiceVolts({ text, nameOf, bench }: Netlist): Promise<ReadonlyMap<string, number>> {
  if (!spice) throw new Error("there is no ngspice");
  try {
    return await spice.volts(text);
  } catch {
    const { volts } = bench.settled.point;
    const starts = [...nameOf].flatMap(([node, name]) =>
      name === "0" ? [] : [`.nodeset V(${name})=${volts[node]}`],
    );
    return spice.volts(text.replace(/^\.op$/m, `${starts.join("\n")}\n.op`));
  }
}

/** Everything in which ngspice disagrees, one line each. */
function disagreements(netlist: Netlist, found: ReadonlyMap<string, number>): string[] {
  const { point } = netlist.bench.settled;
  return [...netlist.nameOf].flatMap(([node, name]) => {
    const ours = point.volts[node] as number;
    const theirs = name === "0" ? 0 : found.get(name);
    if (theirs === undefined) return [`${name}: ngspice has no such node`];
    return Math.abs(ours - theirs) <= allowed(ours)
      ? []
      : [`${name}: ${ours} V, ngspice ${theirs} V`];
  });
}

type Across = (a: number, b: number) => number | null;

/** The volts that decide, and between which they must lie for the state that we settled on. */
function expectedOf(decider: Decider, state: boolean, across: Across, systemVoltage: number) {
  const within = (volts: number, lowest: number, highest: number) => ({ volts, lowest, highest });
  const none = Number.NEGATIVE_INFINITY;
  const any = Number.POSITIVE_INFINITY;
  switch (decider.is) {
    case "coil": {
      const volts = Math.abs(across(decider.a, decider.b) ?? 0);
      return state ? within(volts, decider.dropOut, any) : within(volts, none, decider.pullIn);
    }
    case "fed": {
      const volts = Math.max(...decider.pairs.map(([a, b]) => across(a, b) ?? 0));
      return state ? within(volts, decider.minVolts, any) : within(volts, none, decider.minVolts);
    }
    case "level": {
      const { input, does, active } = decider;
      // at rest whatever its input says: what it did in time nobody has told
      if (does === "toggle" || does === "flash") return within(state ? 1 : 0, none, 0);
      const found =
        input === null
          ? null
          : decider.grounds.map((ground) => across(input, ground)).find((one) => one !== null);
      const isActive = state !== (does === "invert");
      if (typeof found !== "number") return within(isActive ? 1 : 0, none, 0);
      const edge = (active === "high" ? HIGH : LOW) * systemVoltage;
      return isActive === (active === "high")
        ? within(found, edge, any)
        : within(found, none, edge);
    }
  }
}

/** Relays, modules and their paths that are not where ngspice's volts would put them. */
function misplaced({ bench, nameOf }: Netlist, found: ReadonlyMap<string, number>): string[] {
  const { settled, wiring } = bench;
  const { piece } = settled.point.factored;
  // one that chatters agrees with no volts
  if (settled.oscillating.length > 0) return [];
  const voltsAt = (node: number) => {
    const name = nameOf.get(node);
    return name === "0" ? 0 : (found.get(name ?? "") ?? Number.NaN);
  };
  /** Null where the two do not hang together; NaN where they do, in a piece left out of the deck. */
  const across: Across = (a, b) => (piece[a] === piece[b] ? voltsAt(a) - voltsAt(b) : null);
  return wiring.deciders.flatMap((decider) => {
    const state = settled.states.get(decider.id) ?? false;
    const { volts, lowest, highest } = expectedOf(decider, state, across, wiring.systemVoltage);
    const fed =
      decider.is !== "level" || decider.power === null || settled.states.get(decider.power);
    if (Number.isNaN(volts)) return [];
    const right = fed
      ? volts >= lowest - allowed(volts) && volts <= highest + allowed(volts)
      : !state;
    return right ? [] : [`${decider.id} is ${state ? "on" : "off"} at ${volts} V`];
  });
}

/** Fuses and breakers whose current, and with it whether they hold, ngspice finds to be another. */
function otherAmps({ bench, nameOf }: Netlist, found: ReadonlyMap<string, number>): string[] {
  const { branches, point } = bench.settled;
  return branches.flatMap(({ a, b, element, owner }, index) => {
    const [from, to] = [nameOf.get(a), nameOf.get(b)];
    if (element?.law.is !== "protection" || from === undefined || to === undefined) return [];
    const across = (found.get(from) ?? 0) - (found.get(to) ?? 0);
    const [ours, theirs] = [point.amps[index] as number, across / (point.ohms[index] as number)];
    // a millionth of an ohm under some ten volts: a microvolt is an ampere
    const close = Math.abs(Math.abs(ours) - Math.abs(theirs)) <= 0.01 + 1e-3 * Math.abs(ours);
    return close ? [] : [`${owner} carries ${ours} A, ngspice ${theirs} A`];
  });
}

const KINDS_IN_SPICE = [
  ...["battery", "fuse", "breaker", "switch", "relay", "lamp", "solenoid", "motor", "heater"],
  ...["horn", "resistor", "sender", "potentiometer", "alternator", "converter", "diode", "module"],
  ...["wire", "held", "a junction that conducts"],
];

/** Kinds of parts of which something conducts in the deck. */
function kindsInUse(job: Job, { bench, nameOf }: Netlist): ReadonlySet<string> {
  const { branches, point } = bench.settled;
  const kindOf = new Map(job.diagram.parts.map(({ id, kind }) => [id, kind]));
  const used = new Set<string>();
  branches.forEach(({ a, element, owner, acts }, index) => {
    if (!Number.isFinite(point.ohms[index]) || !nameOf.has(a)) return;
    used.add(owner === null ? "held" : element === null ? "wire" : (kindOf.get(owner) ?? ""));
    if (acts.is === "junction") used.add("a junction that conducts");
  });
  return used;
}

async function inTurns<T>(list: readonly T[], work: (one: T) => Promise<void>): Promise<void> {
  const left = [...list];
  const worker = async () => {
    for (let one = left.pop(); one !== undefined; one = left.pop()) await work(one);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
}

test.skipIf(spice === null)(
  `${MACHINES} random machines, each in two states, have ngspice's volts and rest where these put them`,
  async () => {
    const wrong: string[] = [];
    const conducting = new Map<string, number>();
    let nodes = 0;
    await inTurns(
      Array.from({ length: MACHINES }, (_, n) => trialOf(SEED + n)),
      async ({ seed, job, when, then, held, joints }) => {
        for (const state of [when, then]) {
          const netlist = netlistOf(job, null, state, held, joints);
          const found = await spiceVolts(netlist);
          nodes += netlist.nameOf.size;
          for (const kind of kindsInUse(job, netlist)) {
            conducting.set(kind, (conducting.get(kind) ?? 0) + 1);
          }
          const faults = [
            ...disagreements(netlist, found),
            ...misplaced(netlist, found),
            ...otherAmps(netlist, found),
          ];
          if (faults.length === 0) continue;
          const which = state === when ? "" : " after one change";
          wrong.push(`PINTRUTH_SEED=${seed}${which}: ${faults.slice(0, 4).join("; ")}`);
        }
      },
    );
    expect(wrong.slice(0, 5), `${wrong.length} of ${MACHINES}`).toEqual([]);
    // that there was something to find in them
    expect(nodes / MACHINES / 2).toBeGreaterThan(15);
    for (const kind of KINDS_IN_SPICE) {
      expect(conducting.get(kind) ?? 0, kind).toBeGreaterThan(MACHINES / 60);
    }
  },
  120_000,
);

test.skipIf(spice === null)("the comparison notices one per cent in one source", async () => {
  const { job, when } = trialOf(7);
  const netlist = netlistOf(job, null, when);
  expect(disagreements(netlist, await spiceVolts(netlist))).toEqual([]);
  const other = netlist.text.replace(
    /^(V\S+ \S+ \S+) (\S+)$/m,
    (_, start: string, volts: string) => `${start} ${Number(volts) * 1.01}`,
  );
  expect(other).not.toBe(netlist.text);
  expect(disagreements(netlist, await spiceVolts({ ...netlist, text: other }))).not.toEqual([]);
});

test("the random machines are jobs that can be read, in states that can be", () => {
  for (let n = 0; n < 50; n++) {
    const { job, when } = trialOf(SEED + n);
    expect(readJobText(JSON.stringify(job)), `PINTRUTH_SEED=${SEED + n}`).toMatchObject({
      ok: true,
    });
    expect(setUp(job, null, when).wiring.problems).toEqual([]);
  }
});
