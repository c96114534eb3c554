import { type Branch, wireOhms } from "../circuit/index.ts";
import { type Id, ownerOf, type Part, type PinRef, pinRef } from "../job/index.ts";
import type { UsualDrop } from "../standards/index.ts";
import type { DropState } from "./drop-path.ts";
import type { Shared } from "./shared.ts";

/** One stretch of the way that a load's current takes, as one would put a meter across it. */
export interface DropLeg {
  readonly is: "wire" | "fuse" | "contacts" | "joint" | "ground-path" | "load" | "other";
  /** Wires and parts of it, in the order of the current. */
  readonly ids: readonly Id[];
  /** Ends: the current comes in at `red`. Alike for a joint, whose two sides have one name. */
  readonly red: PinRef;
  readonly black: PinRef;
  /**
   * V that it drops while good; null where the loads' values are not said, where a wire's size or length is not known, of a fuse or contact
   * that carries more than those usually do, and of a load.
   */
  readonly drop: LegDrop | null;
  /** Which usual limit counts; null where there is none. */
  readonly limit: UsualDrop | null;
  /** Drops read across it in this very state. */
  readonly read: readonly DropRead[];
}

/** V. `about`: as drawn; the others: the limits of a healthy machine. */
export interface LegDrop {
  readonly about: number;
  readonly least: number;
  readonly most: number;
}

export interface DropRead {
  readonly reading: Id;
  /** V, positive along the current. */
  readonly volts: number;
  /** Null where there is no limit to hold it against. */
  readonly withinLimit: boolean | null;
}

export type BareLeg = Omit<DropLeg, "read">;

/** One leg a branch, joints between wires, and all of the return that is wire in one. */
export function legsOf(
  shared: Shared,
  state: DropState,
  along: readonly number[],
): readonly BareLeg[] {
  const bare = along.map((index) => legOf(state, index));
  const lastLoad = bare.findLastIndex(({ is }) => is === "load");
  const legs: BareLeg[] = [];
  bare.forEach((leg, place) => {
    const last = legs.at(-1);
    const isReturn = lastLoad >= 0 && place > lastLoad;
    if (isReturn && leg.is === "wire") {
      if (last?.is === "ground-path") legs[legs.length - 1] = joined(last, leg);
      else legs.push({ ...leg, is: "ground-path", limit: "ground-path" });
      return;
    }
    const joint = last && !isReturn ? jointBetween(shared.parts, last, leg) : null;
    if (joint) legs.push(joint);
    legs.push(leg);
  });
  return legs;
}

const joined = (first: BareLeg, second: BareLeg): BareLeg => ({
  ...first,
  ids: [...first.ids, ...second.ids],
  black: second.black,
  drop:
    first.drop && second.drop
      ? {
          about: first.drop.about + second.drop.about,
          least: first.drop.least + second.drop.least,
          most: first.drop.most + second.drop.most,
        }
      : null,
});

/** A splice or inline plug in which two wires meet: nothing is drawn to lie across it. */
function jointBetween(
  parts: ReadonlyMap<Id, Part>,
  before: BareLeg,
  after: BareLeg,
): BareLeg | null {
  const kind = parts.get(ownerOf(after.red))?.kind;
  if (before.black !== after.red || (kind !== "splice" && kind !== "inline")) return null;
  return {
    is: "joint",
    ids: [ownerOf(after.red)],
    red: after.red,
    black: after.red,
    drop: { about: 0, least: 0, most: 0 },
    limit: "high-current-connection",
  };
}

/** A past which a fuse or contact is made for the current, and its ohms are not the usual ones (common practice, no source). */
const MOST_USUAL_AMPS = 20;

/** Share of the amps of a leg by which unsaid loads must move them for its drop not to be known. */
const FELT = 0.1;

function legOf({ wiring, point, others, wires }: DropState, index: number): BareLeg {
  const { owner, element, acts } = wiring.branches[index] as Branch;
  const amps = point.amps[index] as number;
  const wireHere = element === null ? wires.get(owner ?? "") : undefined;
  const [a, b]: readonly [PinRef, PinRef] = wireHere
    ? [wireHere.from, wireHere.to]
    : [pinRef(owner ?? "", element?.a ?? "1"), pinRef(owner ?? "", element?.b ?? "1")];
  const [red, black] = amps > 0 ? [a, b] : [b, a];
  const size = Math.abs(amps);
  const isMoved = others.some(
    (other) => Math.abs((other.amps[index] as number) - amps) > FELT * size,
  );
  const isUnknown = isMoved || (wireHere ? wireOhms(wireHere) === null : size > MOST_USUAL_AMPS);
  const drop: BareLeg["drop"] =
    isUnknown || acts.is !== "ohmic"
      ? null
      : { about: size * acts.ohms, least: size * acts.low, most: size * acts.high };
  const bare = { ids: owner === null ? [] : [owner], red, black, drop };
  if (wireHere) return { ...bare, is: "wire", limit: "high-current-cable" };
  switch (element?.law.is) {
    case "protection":
      return { ...bare, is: "fuse", limit: "high-current-connection" };
    case "contact":
    case "relay-contact":
      return { ...bare, is: "contacts", limit: "contacts" };
    case "load":
    case "led":
    case "coil":
    case "resistor":
    case "sender":
    case "wiper":
      return { ...bare, is: "load", drop: null, limit: null };
    default:
      return { ...bare, is: "other", drop: null, limit: null };
  }
}
