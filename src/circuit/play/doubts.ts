import { addTo } from "../../base/index.ts";
import type { Id } from "../../job/index.ts";
import {
  type Branch,
  type Decider,
  decide,
  held,
  type OperatingPoint,
  type Unknown,
  type Wiring,
} from "../solve/index.ts";
import { secondsOf } from "./levels.ts";
import { type Memory, pulseOn } from "./memory.ts";
import { openedIn } from "./overload.ts";
import type { Rest } from "./settle.ts";
import { type Reach, reachOfUnknowns } from "./unknown-reach.ts";

/** What can't be told of a settled state, because nobody has said something. */
export interface PlayDoubts {
  readonly reach: Reach;
  /** The state with every doubted contact open, in which each unknown is felt in full. */
  readonly open: OperatingPoint;
  /** Ids of deciders of which nobody can tell what they do now. */
  readonly doubted: ReadonlySet<string>;
  readonly sentences: readonly string[];
}

/**
 * What depends on an unknown, and then on a relay or module that depends on one, and so on. What
 * chatters can't be told either. What relays and modules were told before is known, for it was
 * played, but for those of which nobody could tell `before` and that may lie either way ever since.
 */
export function doubtsOf(wiring: Wiring, rest: Rest, before: ReadonlySet<string>): PlayDoubts {
  const { point, memory, blown, oscillating } = rest;
  const doubted = new Set(oscillating);
  const contacts = contactsOf(wiring);
  const isBlown = openedIn(blown);
  const isOpen = (branch: Branch) =>
    isBlown(branch) || (branch.gate !== null && doubted.has(branch.gate.by));
  const doubtsAbout = ({ id, part }: Decider, what: string): readonly Unknown[] =>
    (contacts.get(id) ?? []).map(({ a, b, acts }) => ({
      part,
      nodes: [a, b],
      joint: acts.is !== "source",
      what,
    }));
  const unsaid = [
    ...wiring.unknowns,
    ...wiring.deciders.flatMap((one) =>
      doubted.has(one.id) ? doubtsAbout(one, `${one.part}, which never comes to rest`) : [],
    ),
  ];
  const unknowns = [...unsaid];
  for (;;) {
    const open = doubted.size === 0 ? point : held(wiring, memory.states, [], null, false, isOpen);
    const reach = reachOfUnknowns(wiring, open, unknowns);
    const others = wiring.deciders.filter(({ id }) => !doubted.has(id));
    const doubt = (more: readonly Decider[], what: (part: Id) => string): readonly Unknown[] => {
      for (const { id } of more) doubted.add(id);
      const found = more.flatMap((one) => doubtsAbout(one, what(one.part)));
      unknowns.push(...found);
      return found;
    };
    const moved = others.filter((one) => dependsOnUnknown(one, reach, doubted));
    if (moved.length > 0) {
      doubt(moved, (part) => `what ${part} does`);
      continue;
    }
    const left = lyingEitherWay(
      others.filter(({ id }) => before.has(id)),
      wiring,
      rest,
      isBlown,
    );
    if (left.length > 0) {
      unsaid.push(...doubt(left, (part) => `which way ${part} was left`));
      continue;
    }
    const felt = unsaid.filter((one) => reach.felt.has(one)).map(({ what }) => what);
    const sentences = [...inWords(felt), ...assumptions(wiring, memory)];
    return { reach, open, doubted, sentences };
  }
}

function dependsOnUnknown(decider: Decider, reach: Reach, doubted: ReadonlySet<string>): boolean {
  switch (decider.is) {
    case "coil":
      return reach.between(decider.a, decider.b);
    case "fed":
      return decider.pairs.some(([a, b]) => reach.between(a, b));
    case "level": {
      const { input, grounds, power } = decider;
      if (power !== null && doubted.has(power)) return true;
      return input !== null && grounds.some((ground) => reach.between(input, ground));
    }
  }
}

/**
 * Which of them would stay in their other state as things are now, alone or holding one another:
 * toggles that have power, relays that hold themselves.
 */
function lyingEitherWay(
  some: readonly Decider[],
  wiring: Wiring,
  { memory: { states } }: Rest,
  isBlown: (branch: Branch) => boolean,
): readonly Decider[] {
  const toggles = some.filter(
    (one) =>
      one.is === "level" &&
      one.does === "toggle" &&
      (one.power === null || states.get(one.power) === true),
  );
  let coils = some.filter((one) => one.is === "coil");
  // all turned over at once; those that fall back are left out until the others stay
  for (let fell = true; fell && coils.length > 0; ) {
    const turned = new Map([...states, ...coils.map(({ id }) => [id, !states.get(id)] as const)]);
    const then = held(wiring, turned, [], null, false, isBlown);
    const stay = coils.filter((coil) => {
      const is = turned.get(coil.id);
      if (coil.latching) return (pulseOn(coil, then) ?? is) === is;
      return decide(coil, then, turned, wiring.systemVoltage) === is;
    });
    fell = stay.length < coils.length;
    coils = stay;
  }
  return [...toggles, ...coils];
}

function contactsOf({ branches }: Wiring): ReadonlyMap<string, readonly Branch[]> {
  const contacts = new Map<string, Branch[]>();
  for (const branch of branches) if (branch.gate !== null) addTo(contacts, branch.gate.by, branch);
  return contacts;
}

/** Parts of which nobody can tell whether they are on: what lies across them is not known. */
export function undecidedParts(
  { branches, deciders }: Wiring,
  reach: Reach,
  doubted: ReadonlySet<string>,
): ReadonlySet<Id> {
  const parts = new Set<Id>();
  for (const { id, part, is } of deciders) if (is !== "level" && doubted.has(id)) parts.add(part);
  if (reach.felt.size === 0) return parts;
  for (const { a, b, owner, element } of branches) {
    if (owner === null || parts.has(owner)) continue;
    const isLoad = element?.law.is === "load" || element?.law.is === "led";
    if (!isLoad || !(reach.isUnknown[a] || reach.isUnknown[b])) continue;
    if (reach.between(a, b)) parts.add(owner);
  }
  return parts;
}

/** Unsaid things that are named one by one; of more than that, only how many more. */
const MOST_NAMED = 12;

function inWords(felt: readonly string[]): readonly string[] {
  const all = [...new Set(felt)];
  const more = all.length - MOST_NAMED;
  return [
    ...all.slice(0, MOST_NAMED).map((what) => `Not all can be told: much depends on ${what}.`),
    ...(more > 0 ? [`And on ${more} more things that nobody has said.`] : []),
  ];
}

/** What the play goes by although nobody has said it. */
function assumptions({ deciders }: Wiring, { pulsed }: Memory): readonly string[] {
  return deciders.flatMap((decider): string[] => {
    if (decider.is === "coil" && decider.latching && !pulsed.has(decider.id))
      return [
        `Nobody has said which way ${decider.part} was last latched: it is taken as dropped out.`,
      ];
    if (decider.is !== "level" || decider.seconds !== null) return [];
    if (decider.does === "flash")
      return [
        `Nobody has said how fast ${decider.part} flashes: ${secondsOf(decider)} s on and off are taken.`,
      ];
    return decider.does === "delay-on" || decider.does === "delay-off"
      ? [`Nobody has said how long ${decider.part} delays: ${secondsOf(decider)} s is taken.`]
      : [];
  });
}
