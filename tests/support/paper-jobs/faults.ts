/** The things that go wrong on machines, one at a time, and what they do to fuses. */
import type { Random } from "../../../src/base/index.ts";
import type { Id, Part, When } from "../../../src/job/index.ts";
import { stateOf } from "./machine-state.ts";
import type { PaperJob } from "./paper-job.ts";
import { settledVolts } from "./settled.ts";
import type { Fault, TrueMachine } from "./true-machine.ts";

/** Ω of a break, of a bad joint and of a piece of bare wire against metal (common practice). */
const OPEN = 1e9;
const BAD_JOINT = [0.5, 2, 10, 100, 5000] as const;
const SHORT = 0.01;
/** A fuse holds this many times its rating for good, at most; common practice, no source. */
const HOLDS = 1.35;

const WINDINGS: readonly Part["kind"][] = ["solenoid", "motor", "heater", "horn", "lamp", "relay"];
const PROTECTION: readonly Part["kind"][] = ["fuse", "breaker"];

export const FAULT_NAMES = [
  "open wire",
  "bad joint",
  "blown fuse",
  "stuck contact",
  "burnt out load",
  "shorted load",
  "grounded wire",
  "wire shorted to supply",
  "neighbours bridged",
  "terminal without contact",
  "tired battery",
  "dead module",
] as const;

/** One fault of that name somewhere in the machine; null where it has nothing of the kind. */
export function someFault(
  random: Random,
  paper: PaperJob,
  name: (typeof FAULT_NAMES)[number],
): Fault | null {
  const { parts, wires } = paper.job.diagram;
  const ofKinds = (...kinds: readonly Part["kind"][]): Id | null => {
    const some = parts.filter(({ kind }) => kinds.includes(kind));
    return some.length === 0 ? null : random.pick(some).id;
  };
  const partOhms = (at: Id | null, ohms: number): Fault | null =>
    at === null ? null : { is: "part-ohms", at, ohms };
  // nothing protects what lies before the first fuse: a short there is a fire and no fault to find
  const protectedWires = wires.filter(({ mm2 }) => mm2 !== 25);
  const { pin, cavity } = random.pick(paper.pins);
  switch (name) {
    case "open wire":
      return { is: "wire-ohms", at: random.pick(wires).id, ohms: OPEN };
    case "bad joint":
      return { is: "wire-ohms", at: random.pick(wires).id, ohms: random.pick(BAD_JOINT) };
    case "blown fuse":
      return partOhms(ofKinds(...PROTECTION), OPEN);
    case "stuck contact": {
      const at = ofKinds("switch", "relay");
      return at === null ? null : { is: "stuck", at, closed: random.chance(0.5) };
    }
    case "burnt out load":
      return partOhms(ofKinds(...WINDINGS), OPEN);
    case "shorted load":
      return partOhms(ofKinds(...WINDINGS), SHORT);
    case "grounded wire":
      return { is: "leak", at: random.pick(protectedWires).to, to: "chassis", ohms: SHORT };
    case "wire shorted to supply": {
      const to = random.pick([paper.mainBus.pin, paper.keyBus.pin]);
      return { is: "leak", at: random.pick(protectedWires).to, to, ohms: SHORT };
    }
    case "neighbours bridged": {
      const others = paper.pins.filter((one) => one.pin !== pin);
      return { is: "leak", at: pin, to: random.pick(others).pin, ohms: SHORT };
    }
    case "terminal without contact":
      return cavity === null ? null : { is: "terminal-ohms", at: pin, ohms: OPEN };
    case "tired battery":
      return { is: "battery", volts: (paper.job.systemVoltage / 12) * (9 + 2.5 * random.next()) };
    case "dead module":
      return { is: "dead-module", at: pin.slice(0, pin.indexOf(":")) };
  }
}

/** The machine with that fault, after everything on it has been tried once and fuses have blown. */
export function broken(healthy: TrueMachine, fault: Fault): TrueMachine {
  const blown = new Set<Id>();
  const machine: TrueMachine = { ...healthy, fault, blown };
  const atWork: TrueMachine = {
    ...machine,
    driving: new Set(
      healthy.paper.pins
        .filter(({ inside }) => inside === "output-high" || inside === "output-low")
        .map(({ pin }) => pin),
    ),
  };
  const mayBlow =
    fault.is === "leak" || fault.is === "stuck" || (fault.is === "part-ohms" && fault.ohms < 1);
  if (!mayBlow) return machine;
  for (const when of tries(healthy.paper)) {
    for (let again = true; again; ) {
      const state = stateOf(atWork, when);
      const ends = state.fuses.flatMap(({ branch: { a, b } }) => [a, b]);
      const volts = settledVolts(state, healthy.paper.job.systemVoltage, ends);
      const loads = state.fuses.map(({ fuse, amps, branch: { a, b, ohms } }) => ({
        fuse,
        share: volts ? Math.abs(volts(a, b)) / ohms / amps : 0,
      }));
      const [first] = loads.sort((one, other) => other.share - one.share);
      again = first !== undefined && first.share > HOLDS;
      if (first && again) blown.add(first.fuse);
    }
  }
  return machine;
}

/** Every position of the key with all other switches at rest, and with all of them worked. */
function tries({ job }: PaperJob): readonly When[] {
  const switches = job.diagram.parts.filter((part) => part.kind === "switch");
  const key = switches.find(({ control }) => control === "key");
  const others = switches.filter(
    ({ control }) => !["key", "isolator", "emergency-stop"].includes(control),
  );
  return (key?.positions ?? []).flatMap((position) =>
    ["rest", "worked"].map((other) => ({
      switches: Object.fromEntries([
        ...(key ? [[key.id, position]] : []),
        ...others.map(({ id }) => [id, other]),
      ]),
    })),
  );
}
