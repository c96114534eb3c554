import { type Part, type PartKindName, type PinRef, pinRef } from "../../job/index.ts";
import {
  doesWork,
  type Element,
  elementsOf,
  pinsOf,
  type Terminal,
  terminalOf,
} from "../kinds/index.ts";
import { chassisPlace, pageKey } from "../places.ts";

/** How an element counts for those who only ask whether it conducts at all. */
export const PASSES = {
  /** A load, or nothing that leads anywhere. */
  not: 0,
  /** Fuse, contact or relay contact, in some state; a diode, one way round. */
  either: 1,
  relay: 2,
  diode: 3,
  /** A source that passes on what feeds it elsewhere. */
  fed: 4,
  /** What an engine drives. */
  charger: 5,
} as const;

/** An element between two pins by their numbers. */
export interface MemberElement {
  readonly element: Element;
  readonly a: number;
  readonly b: number;
  readonly passes: number;
  /** Pins that feed it, plus and minus, where it passes on what feeds it; −1: no such pin. */
  readonly inlets: readonly [plus: number, minus: number] | null;
}

export interface MemberTerminal {
  readonly pin: number;
  readonly terminal: Terminal;
}

/** A relay's contact beside its coil, by the numbers of their pins. */
export interface CommandedContact {
  /** The relay's first pin, which stands for the relay. */
  readonly relay: number;
  readonly a: number;
  readonly b: number;
  readonly coilA: number;
  readonly coilB: number;
}

/** An element that passes on what feeds it elsewhere, and one of the pins that feed it. */
export interface Inlet {
  readonly a: number;
  readonly b: number;
  readonly fedBy: number;
}

/**
 * A part as one of a network: its pins and elements have numbers that they keep for as long as the
 * part stays alike. A part that changes in a way that matters becomes another member.
 */
export interface Member {
  /** As it is drawn now. */
  part: Part;
  readonly kind: PartKindName;
  readonly firstPin: number;
  readonly pins: readonly PinRef[];
  /** The pin's number; −1 for one that the part does not have. */
  numberOf(pin: PinRef): number;
  readonly firstElement: number;
  readonly elements: readonly MemberElement[];
  readonly terminals: readonly MemberTerminal[];
  /** A relay's. */
  readonly coil: MemberElement | null;
  /** Places in `elements` of what does work: loads, coils, light-emitting diodes. */
  readonly loads: readonly number[];
  /** A fuse or breaker. */
  readonly isProtection: boolean;
  /** Some element is driven by an engine. */
  readonly isCharger: boolean;
  readonly relayContacts: readonly CommandedContact[];
  readonly inlets: readonly Inlet[];
  /** Members with equal keys are one point without a wire. */
  readonly joinKey: string | null;
  /** The page end's label; empty where nothing is written on it; null for anything else. */
  readonly page: string | null;
}

/** Numbers its pins and elements from the given ones on. */
export function createMember(
  part: Part,
  systemVoltage: number,
  firstPin: number,
  firstElement: number,
): Member {
  const names = distinct(pinsOf(part).map(({ id }) => id));
  const pinNumber = finder(names, firstPin);
  const elements = elementsOf(part, systemVoltage).flatMap((element): MemberElement[] => {
    const [a, b] = [pinNumber(element.a), pinNumber(element.b)];
    if (a < 0 || b < 0) return [];
    const { law } = element;
    const inlets =
      law.is === "source" && typeof law.live !== "string"
        ? ([pinNumber(law.live.fedBy[0]), pinNumber(law.live.fedBy[1])] as const)
        : null;
    return [{ element, a, b, passes: passesOf(element), inlets }];
  });
  const pins = names.map((name) => pinRef(part.id, name));
  const coil = elements.find(({ element }) => element.law.is === "coil") ?? null;
  return {
    part,
    kind: part.kind,
    firstPin,
    pins,
    numberOf: finder(pins, firstPin),
    firstElement,
    elements,
    terminals: names.flatMap((name) => {
      const terminal = terminalOf(part, name);
      return terminal ? [{ pin: pinNumber(name), terminal }] : [];
    }),
    coil,
    loads: elements.flatMap(({ element }, index) => (doesWork(element.law) ? [index] : [])),
    isProtection: elements[0]?.element.law.is === "protection",
    isCharger: elements.some(({ passes }) => passes === PASSES.charger),
    relayContacts: coil ? contactsBy(coil, elements, firstPin) : [],
    inlets: elements.flatMap(inletsOf),
    joinKey: joinKeyOf(part),
    page: part.kind === "offpage" ? (pageKey(part) ?? "") : null,
  };
}

function contactsBy(
  coil: MemberElement,
  elements: readonly MemberElement[],
  relay: number,
): readonly CommandedContact[] {
  return elements
    .filter(({ passes }) => passes === PASSES.relay)
    .map(({ a, b }) => ({ relay, a, b, coilA: coil.a, coilB: coil.b }));
}

const inletsOf = ({ a, b, inlets }: MemberElement): readonly Inlet[] =>
  (inlets ?? []).filter((pin) => pin >= 0).map((fedBy) => ({ a, b, fedBy }));

/** More names than these are found by a table of their own. */
const FEW = 12;

function distinct(names: readonly string[]): readonly string[] {
  if (names.length > FEW) return [...new Set(names)];
  return names.filter((name, index) => names.indexOf(name) === index);
}

function finder(names: readonly string[], first: number): (name: string) => number {
  if (names.length > FEW) {
    const numbers = new Map(names.map((name, index) => [name, first + index]));
    return (name) => numbers.get(name) ?? -1;
  }
  return (name) => {
    const index = names.indexOf(name);
    return index < 0 ? -1 : first + index;
  };
}

function passesOf({ law }: Element): number {
  switch (law.is) {
    case "protection":
    case "contact":
      return PASSES.either;
    case "relay-contact":
      return PASSES.relay;
    case "diode":
      return PASSES.diode;
    case "source":
      if (typeof law.live !== "string") return PASSES.fed;
      return law.live === "engine-running" ? PASSES.charger : PASSES.not;
    default:
      return PASSES.not;
  }
}

/** What makes separate pins one point without a wire: chassis places and equal page-end labels. */
function joinKeyOf(part: Part): string | null {
  if (part.kind === "ground") return `ground ${chassisPlace(part)}`;
  if (part.kind !== "offpage") return null;
  const key = pageKey(part);
  return key === null ? null : `page ${key}`;
}
