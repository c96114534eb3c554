import { addTo } from "../../base/index.ts";
import {
  type CavityRef,
  type Id,
  type Job,
  ownerOf,
  type PinRef,
  type Probe,
  type Reading,
  type RoleName,
} from "../../job/index.ts";
import { type Role, standingRole } from "../../roles/index.ts";
import type { ModuleView, ReadingView } from "../rule.ts";
import type { Judged, JudgedSoFar } from "./judged-readings.ts";
import { keepList, Last, Views } from "./keep.ts";

/** Looks at the judged readings, and at the roles of the cavities and pins that they were taken at. */
export class ReadingViews {
  private readonly last = new Last<readonly ReadingView[]>();
  private readonly views = new Views<Reading, ReadingView>();
  private readonly tied = new Last<ReadonlyMap<CavityRef, readonly PinRef[]>>();

  /** Of readings that are looked at again the views stay as they were, where there were any. */
  of(
    { judged: all, again }: JudgedSoFar,
    modules: readonly ModuleView[],
    links: Job["links"],
  ): readonly ReadingView[] {
    // only what is whole is worth keeping as a whole
    const whole = again.size === 0 ? again.size : {};
    return this.last.of([all, modules, links, whole], (before) => {
      if (all.length === 0) return keepList(before, []);
      const probes = new Set(all.flatMap(({ reading }) => [reading.red, reading.black]));
      const owners = this.ownersAt(probes, links);
      const there = modules.flatMap(({ module, roles }) =>
        owners.has(module.id)
          ? roles.filter(
              ({ pin, cavity }) => probes.has(pin) || (cavity !== null && probes.has(cavity)),
            )
          : [],
      );
      const waiting = new Set([...again].map(({ id }) => id));
      const viewed = all.flatMap((one): [Reading, ReadingView][] => {
        const { reading } = one;
        const view = waiting.has(reading.id) ? this.views.known(reading) : viewOf(one, there);
        return view ? [[reading, view]] : [];
      });
      return keepList(before, this.views.of(viewed));
    });
  }

  /** What the probes lie on: most readings are taken at a few modules of many. */
  private ownersAt(probes: ReadonlySet<Probe>, links: Job["links"]): ReadonlySet<Id> {
    const tied = this.tied.of([links], () => {
      const pins = new Map<CavityRef, PinRef[]>();
      for (const { cavity, pin } of links) addTo(pins, cavity, pin);
      return pins;
    });
    return new Set(
      [...probes].flatMap((probe) => [probe, ...(tied.get(probe) ?? [])].map(ownerOf)),
    );
  }
}

const NONE: readonly string[] = [];

function viewOf(
  { reading, judged, thing, explained, forbids }: Judged,
  roles: readonly Role[],
): ReadingView {
  if (judged.verdict === "invalid")
    return { reading, judged, thing, explained: null, forbids: [], along: [] };
  const at = (probe: string) =>
    roles.find(({ pin, cavity }) => pin === probe || cavity === probe)?.because;
  const found = roles.flatMap((role) => {
    const { cavity } = role;
    if (cavity === null) return [];
    if (reading.red !== cavity && reading.black !== cavity) return [];
    const whys = toldOf(role).map((told) => forbids(told, cavity));
    // What one meaning of the word allows is no contradiction.
    const [why = null] = whys.includes(null) ? [] : whys;
    return why === null ? [] : [{ role, why }];
  });
  const along = at(reading.red) ?? at(reading.black) ?? NONE;
  return {
    reading,
    judged,
    thing,
    explained: explained(),
    forbids: found,
    along,
  };
}

/** What was adopted, else all that the printed word may mean. */
function toldOf(role: Role): readonly RoleName[] {
  const { printedRole } = role;
  const adopted = standingRole(role);
  if (adopted !== null) return [adopted];
  if (printedRole === null || printedRole === "unrecognised") return [];
  const all = role.printedMeanings ?? [printedRole];
  return all.filter((one) => {
    const wider = WIDER[one];
    return wider === undefined || !all.includes(wider);
  });
}

/** What forbids a feed or a ground forbids a sensor's as well. */
const WIDER: Readonly<Partial<Record<RoleName, RoleName>>> = {
  "sensor-supply": "supply",
  "sensor-ground": "ground",
};
