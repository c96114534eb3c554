import {
  type CavityRef,
  type Id,
  type Job,
  type Probe,
  pinRef,
  type Reading,
  type RoleName,
  splitRef,
} from "../job/index.ts";
import { batteriesOf } from "./cavity-pins.ts";
import { drawnWay } from "./drawn-way.ts";
import { leastFeedOhms } from "./feed-ohms.ts";
import { type Presence, presenceIn } from "./presence.ts";
import { type Shared, sharedFor } from "./shared.ts";

/** What one reading shows to be present at a cavity, and the roles that can't give it. */
export interface RulesOut {
  readonly presence: Presence;
  readonly roles: ReadonlyMap<RoleName, string>;
  /** Roles that it rules out only beside a reading that shows a feed at the same cavity. */
  readonly besideFeed: ReadonlyMap<RoleName, string>;
}

/**
 * Sensors, senders and potentiometers take more than this, Ω (from memory: potentiometers of
 * pedals and joysticks have some kΩ, active sensors draw milliamps). A way of fewer is not theirs.
 */
const LEAST_SENSOR_OHMS = 100;

/** Twice what the way has at most, and the leads, Ω: a load of fewer could be taken for it. */
const margin = (ohms: number): number => 2 * ohms + 2;

/**
 * What a reading rules out at a cavity; null where it shows nothing present. docs/meter-roles.md has
 * the table, and why so many readings are not in it: a role is ruled out only where neither a good
 * machine of that role nor one with something open, blown, corroded or dead can show this.
 */
function ruledOutBy(shared: Shared, reading: Reading, cavity: CavityRef): RulesOut | null {
  const presence = presenceIn(shared, reading, cavity);
  if (!presence) return null;
  return { presence, ...(presence.is === "feed" ? byFeed : byReturn)(shared, presence, reading) };
}

/** The same of a reading of a job. */
export const rulesOut = (
  job: Job,
  machine: Id,
  reading: Reading,
  cavity: CavityRef,
): RulesOut | null => ruledOutBy(sharedFor(job, machine), reading, cavity);

type Out = Omit<RulesOut, "presence">;

function byFeed(shared: Shared, { cavity, ohmsAtMost, other }: Presence): Out {
  const roles = new Map<RoleName, string>([["unused", "what feeds it is wired to it"]]);
  const way = drawnWay(shared, cavity, other);
  // where chassis is the feed, a feed is called ground all the same
  if (isPlusEarthed(shared)) return { roles, besideFeed: NONE };
  // an open ground is pulled up by whatever else hangs on it
  const why = "no way to ground holds system voltage under load";
  if (!way.isGround || !way.hasCompany) roles.set("ground", why);
  if (way.isReturned && way.hasCompany) return { roles, besideFeed: NONE };
  roles.set("switched-ground", why);
  if (ohmsAtMost < LEAST_SENSOR_OHMS && (way.isFed || margin(ohmsAtMost) < way.sensorOhms))
    roles.set("sensor-ground", "no sensor lets through enough to hold a load");
  return { roles, besideFeed: NONE };
}

function byReturn(
  shared: Shared,
  { cavity, ohmsAtMost, other }: Presence,
  { when, quantity }: Reading,
): Out {
  const roles = new Map<RoleName, string>([["unused", "it leads to ground"]]);
  const way = drawnWay(shared, cavity, other);
  if (ohmsAtMost < LEAST_SENSOR_OHMS && (way.isReturned || margin(ohmsAtMost) < way.sensorOhms))
    roles.set("sensor-supply", "no sensor lets so much through to ground");
  const isLamp = quantity !== "ohms";
  const to = isLamp ? wayBack(shared) : other;
  // a dead feed returns current through all that hangs on it
  if (leastFeedOhms(shared, { when, to, isLamp }) <= margin(ohmsAtMost))
    return { roles, besideFeed: NONE };
  const why = "no feed leads to ground through so little";
  const feeds = new Map<RoleName, string>([
    ["supply", why],
    ["switched-supply", why],
  ]);
  // a chafed feed behind its blown fuse is as solid a way to ground as any
  if (way.isFed) return { roles, besideFeed: feeds };
  return { roles: new Map([...roles, ...feeds]), besideFeed: NONE };
}

const NONE: ReadonlyMap<RoleName, string> = new Map();

/** Where a lamp on battery plus sends its current. */
const wayBack = (shared: Shared): Probe =>
  batteriesOf(shared).length === 1 ? "battery-" : "chassis";

/** Battery plus lies on a chassis: there a ground is a feed, and is called ground all the same. */
const isPlusEarthed = ({ network }: Shared): boolean =>
  [...network.parts.values()].some((part) => {
    if (part.kind !== "battery") return false;
    const net = network.netOf.get(pinRef(part.id, "+"));
    return network.nets[net ?? -1]?.terminals.some(({ terminal }) => terminal === "chassis");
  });

/**
 * Whether a reading shows something at a cavity that the printed role forbids: volts that hold under
 * load where it says ground, a solid return where it says supply. One sentence, or null. A fault can
 * look like either, so it stays silent where the circuit as drawn agrees with the word and a load
 * could bring the reading about.
 */
export function presenceContradicts(
  job: Job,
  machine: Id,
  reading: Reading,
  printedRole: RoleName,
  cavity: CavityRef = cavityProbe(job, reading),
): string | null {
  if (!TOLD.has(printedRole)) return null;
  const shared = sharedFor(job, machine);
  const found = ruledOutBy(shared, reading, cavity);
  if (!found) return null;
  // a word for ground stands for one through a contact too
  const stands: readonly RoleName[] =
    printedRole === "ground" ? ["ground", "switched-ground"] : [printedRole];
  const isOut = stands.every((role) => found.roles.has(role));
  if (found.presence.is === "feed") {
    return isOut
      ? `System voltage that holds under load stands at ${cavity}, where the diagram says ground.`
      : null;
  }
  // where circuit and meter both find a ground, no load on some feed is blamed for it
  const way = drawnWay(shared, cavity, found.presence.other);
  const isGround = printedRole !== "ground" && way.isGround && !way.isFed;
  return isOut || isGround
    ? `A solid return stands at ${cavity}, where the diagram says supply.`
    : null;
}

/** Words that a reading may contradict: what stands there instead is no fault of theirs. */
const TOLD: ReadonlySet<RoleName> = new Set(["ground", "supply", "switched-supply"]);

function cavityProbe(job: Job, { red, black }: Reading): CavityRef {
  const isCavity = (probe: Probe) => job.plugs.some((plug) => plug.id === splitRef(probe).owner);
  return isCavity(red) || !isCavity(black) ? red : black;
}
