import { createExplorer, type Explorer, type Sight } from "../circuit/index.ts";
import { type PartOf, type PinRef, ROLE_NAMES, type RoleName } from "../job/index.ts";
import {
  ANYTHING_BUT_UNUSED,
  isPlainlyFed,
  isPlainlyGrounded,
  lookOut,
  type Rail,
  refOf,
  type View,
} from "./look-out.ts";
import type { Sighting, Trail } from "./sighting.ts";

/** What the circuit says of one pin, and what it goes by. */
export interface PinRole {
  readonly pin: PinRef;
  /** Never empty; in the published order of roles. */
  readonly fits: readonly RoleName[];
  readonly side: "high" | "low" | null;
  /** What was seen, the deciding thing first. */
  readonly sightings: readonly Sighting[];
  readonly trail: Trail | null;
  /** The search met its bound: any role is left possible. */
  readonly bounded: boolean;
}

export interface ModuleRoles {
  readonly explorer: Explorer;
  readonly module: PartOf<"module">;
  readonly pins: readonly PinRole[];
}

/** What the circuit allows each pin of a module to be, with only that module taken out. */
export function inferRoles(sight: Sight, module: PartOf<"module">): ModuleRoles {
  const explorer = createExplorer(sight, module.id);
  const bare = new Set(
    module.pins.map((pin) => refOf(module, pin.id)).filter((pin) => !sight.isWired(pin)),
  );
  if (bare.size === module.pins.length) {
    return { explorer, module, pins: module.pins.map((pin) => untraced(refOf(module, pin.id))) };
  }
  // A line that nobody has traced yet may be anything, a ground too.
  const isTraced = !module.untraced || bare.size === 0;
  const views = module.pins.map((pin) => lookOut(explorer, module, refOf(module, pin.id)));
  const fedPins = new Set(views.filter((view) => view.fed.some(isPlainlyFed)).map((v) => v.pin));
  const groundPins = new Set(
    views.filter((view) => view.grounded.some(isPlainlyGrounded)).map((v) => v.pin),
  );
  const hasAnother = (pins: ReadonlySet<PinRef>, pin: PinRef) =>
    pins.size > (pins.has(pin) ? 1 : 0);
  const pins = views.map((view) =>
    !isTraced && bare.has(view.pin)
      ? untraced(view.pin)
      : decide(
          view,
          hasAnother(fedPins, view.pin),
          hasAnother(groundPins, view.pin) ? "is there" : isTraced ? "none" : "may be there",
          new Set((module.power?.ground ?? []).map((pin) => refOf(module, pin))),
        ),
  );
  return { explorer, module, pins };
}

/** Where lines are still to be traced, a pin without a wire is no sign that it is not used. */
const untraced = (pin: PinRef): PinRole => ({
  pin,
  fits: ROLE_NAMES,
  side: null,
  sightings: [],
  trail: null,
  bounded: false,
});

function decide(
  view: View,
  otherFeed: boolean,
  otherGround: OtherGround,
  statedGrounds: ReadonlySet<PinRef>,
): PinRole {
  if (view.bounded) {
    return {
      pin: view.pin,
      fits: ANYTHING_BUT_UNUSED,
      side: null,
      sightings: [],
      trail: null,
      bounded: true,
    };
  }
  const sightings = asNeighboursAllow([
    ...view.fed.map((rail) => seenFeed(rail, otherFeed)),
    ...view.grounded.map((rail) => seenGround(rail, otherGround, statedGrounds.has(view.pin))),
    ...view.others,
  ]);
  const found = new Set(sightings.flatMap((one) => one.roles));
  const fits =
    found.size === 0 ? (["unused"] as const) : ROLE_NAMES.filter((role) => found.has(role));
  return {
    pin: view.pin,
    fits,
    side: commonSide(sightings),
    sightings,
    trail: sightings[0]?.trail ?? null,
    bounded: false,
  };
}

function seenFeed(rail: Rail, otherFeed: boolean): Sighting {
  const { commands, cube, trail } = rail;
  const roles = (): readonly RoleName[] => {
    // Where plus is earthed, what lies on chassis is called ground all the same.
    if (commands.size === 0) return rail.onChassis ? ["supply", "ground"] : ["supply"];
    if (isPlainlyFed(rail)) return ["switched-supply"];
    // A contact that only tells something may still carry the module's only feed.
    if (commands.has("event") && otherFeed) return ["input"];
    return ["switched-supply", "input"];
  };
  const found = roles();
  return { of: "feed", roles: found, side: found.includes("input") ? "high" : null, cube, trail };
}

/** Whether another pin of the module is a proper ground; in one that is half traced it may be. */
type OtherGround = "none" | "may be there" | "is there";

function seenGround(rail: Rail, otherGround: OtherGround, stated: boolean): Sighting {
  const { commands, cube, trail } = rail;
  const roles = (): readonly RoleName[] => {
    // Beside a proper ground, a second one may be a coding strap: both read the same.
    if (commands.size === 0)
      return otherGround === "none" || stated ? ["ground"] : ["ground", "input"];
    const mayEnable =
      otherGround !== "is there" ||
      commands.has("unknown") ||
      (commands.has("interlock") && !commands.has("event"));
    return mayEnable ? ["switched-ground", "input"] : ["input"];
  };
  const found = roles();
  const side = commands.size > 0 ? "low" : null;
  return { of: "ground", roles: found, side, cube, trail };
}

/**
 * A plain wire to another module makes a signal only where nothing else hangs on it. Beside a
 * load the other one may be what drives, so that this pin may be the one that listens. What it
 * listens for is known where a contact makes the line live or grounds it: nothing that shares the
 * line may work against that.
 */
function asNeighboursAllow(sightings: readonly Sighting[]): readonly Sighting[] {
  const solid = sightings.filter((one) => one.of !== "neighbour");
  const neighbours = sightings.filter((one) => one.of === "neighbour");
  if (solid.length === 0 || neighbours.length === 0) return sightings;
  const drives = solid.some((one) => one.roles.includes("output"));
  if (!drives) return solid;
  const side = commonSide(solid.filter((one) => one.of === "feed" || one.of === "ground"));
  const listens = (one: Sighting): Sighting => ({
    ...one,
    roles: ["input", ...(one.stated ?? [])],
    side,
  });
  return [...solid, ...neighbours.map(listens)];
}

/** The one side that every input or output seen agrees on; null where they differ or have none. */
function commonSide(sightings: readonly Sighting[]): "high" | "low" | null {
  const sided = sightings.filter(
    (one) => one.roles.includes("input") || one.roles.includes("output"),
  );
  const sides = new Set(sided.map((one) => one.side));
  return sides.size === 1 ? ([...sides][0] ?? null) : null;
}
