/** A state of a true machine once relays, lamps, diodes and modules have come to rest. */
import type { Id } from "../../../src/job/index.ts";
import type { Bent, MachineState } from "./machine-state.ts";
import { type Branch, lumped, MeshPlan } from "./star-mesh.ts";

/** Shares of system voltage at which a common relay pulls in and drops out. */
const PULLS = 0.62;
const DROPS = 0.2;
/** A module works above this share of system voltage. */
const WORKS = 0.6;
/** A cold filament has a twelfth of its hot ohms. */
const COLD = 1 / 12;
const BLOCKED = 1e9;
/** Ω of a closed relay contact. */
const CLOSED = 0.005;
const ROUNDS = 40;

/** Volts between two nodes. */
export type Volts = (a: number, b: number) => number;

/**
 * Volts with these branches more (a meter, a test lamp) between the nodes that anything beside
 * wires ends at, or that `probed` names; null where the machine never comes to rest.
 */
export function settledVolts(
  state: MachineState,
  systemVoltage: number,
  probed: readonly number[],
  extra: readonly Branch[] = [],
  lamp: Bent | null = null,
): Volts | null {
  const bent = lamp ? [...state.bent, lamp] : state.bent;
  const ends = [...bent, ...extra, ...state.coils, ...state.contacts];
  const inside = state.driven.flatMap(({ plus, minus, branches }) => [
    { a: plus, b: minus },
    ...branches,
  ]);
  const kept = new Set([...probed, ...[...ends, ...inside].flatMap(({ a, b }) => [a, b])]);
  const small = lumped(state.count, state.fixed, kept);
  const placed = <T extends { readonly a: number; readonly b: number }>(one: T): T => ({
    ...one,
    a: small.at(one.a),
    b: small.at(one.b),
  });
  const always = [...small.branches, ...extra.map(placed)];
  const contacts = state.contacts.map(placed);
  const live = state.driven.map((one) => one.branches.map(placed));
  const turns = bent.map(placed);
  const plan = new MeshPlan(small.count, [...always, ...contacts, ...live.flat(), ...turns]);
  const steady = always.map((one) => 1 / one.ohms);
  const lifted = always.map(({ volts }) => volts);

  let conducts = bent.map(() => false);
  let ohms = bent.map((one) => one.ohms);
  let pulled: ReadonlySet<Id> = new Set();
  let works = state.driven.map(() => false);
  for (let round = 0; round < ROUNDS; round++) {
    const siemens = [...steady];
    const lifts = [...lifted];
    const add = (through: number, volts: number) => {
      siemens.push(through);
      lifts.push(volts);
    };
    for (const { relay } of contacts) add(pulled.has(relay) ? 1 / CLOSED : 0, 0);
    live.forEach((own, index) => {
      for (const one of own) add(works[index] ? 1 / one.ohms : 0, one.volts);
    });
    turns.forEach(({ is, volts }, index) => {
      const through = 1 / (ohms[index] ?? 1);
      if (is === "filament") add(through, 0);
      else if (conducts[index]) add(through, volts);
      else add(1 / BLOCKED, 0);
    });
    const volts = plan.volts(siemens, lifts);
    const between: Volts = (a, b) =>
      (volts[small.at(a)] as number) - (volts[small.at(b)] as number);
    const across = ({ a, b }: { a: number; b: number }) => between(a, b);

    const nextConducts = bent.map((one) => one.is === "diode" && across(one) > one.volts);
    const nextOhms = bent.map((one, index) => {
      if (one.is === "diode") return one.ohms;
      const share = Math.sqrt(Math.abs(across(one)) / one.volts);
      const aim = one.ohms * Math.min(1.1, Math.max(COLD, share));
      return Math.sqrt(aim * (ohms[index] ?? aim));
    });
    const nextPulled = new Set(
      state.coils
        .filter((coil) => {
          const share = Math.abs(across(coil)) / systemVoltage;
          return share > (pulled.has(coil.relay) ? DROPS : PULLS);
        })
        .map(({ relay }) => relay),
    );
    const nextWorks = state.driven.map(
      ({ plus, minus }) => across({ a: plus, b: minus }) > WORKS * systemVoltage,
    );
    const rests =
      nextConducts.every((is, index) => is === conducts[index]) &&
      nextOhms.every((is, index) => Math.abs(is / (ohms[index] ?? is) - 1) < 1e-3) &&
      nextWorks.every((is, index) => is === works[index]) &&
      nextPulled.size === pulled.size &&
      [...nextPulled].every((relay) => pulled.has(relay));
    if (rests) return between;
    [conducts, ohms, pulled, works] = [nextConducts, nextOhms, nextPulled, nextWorks];
  }
  return null;
}
