import { restPosition, type Wiring } from "../circuit/index.ts";
import type { Id, When } from "../job/index.ts";
import { USUAL_DROPS } from "../standards/index.ts";
import type { BareLeg, DropRead } from "./drop-legs.ts";
import type { Shared } from "./shared.ts";

/** Rounding of a meter's last digit, V. */
const LAST_DIGIT = 0.005;

/** What was read across each leg in a state. */
export function dropReadings(shared: Shared, when: When, wiring: Wiring) {
  const own = shared.job.machines.find(({ id }) => id === shared.machine)?.readings ?? [];
  const taken = own.filter(
    (one) =>
      one.quantity === "drop" && one.value !== "OL" && isSameState(shared.parts, when, one.when),
  );
  const node = (ref: string) => {
    const probed = wiring.probe(ref);
    return probed.ok ? probed.node : null;
  };
  return (leg: BareLeg): readonly DropRead[] => {
    const [red, black] = [node(leg.red), node(leg.black)];
    if (red === null || black === null || red === black) return [];
    return taken.flatMap((one): DropRead[] => {
      const [from, to] = [node(one.red), node(one.black)];
      const turned = from === black && to === red;
      if (!turned && !(from === red && to === black)) return [];
      const volts = (turned ? -1 : 1) * Number(one.value);
      const limit = leg.limit === null ? null : USUAL_DROPS[leg.limit];
      return [
        {
          reading: one.id,
          volts,
          withinLimit: limit === null ? null : Math.abs(volts) <= limit + LAST_DIGIT,
        },
      ];
    });
  };
}

function isSameState(parts: Shared["parts"], a: When, b: When): boolean {
  const out = (when: When) =>
    [...(when.unplugged ?? []), ...(when.removed ?? [])].sort().join("\n");
  if ((a.engine ?? "off") !== (b.engine ?? "off") || out(a) !== out(b)) return false;
  if (a.standIn !== b.standIn) return false;
  const stands = (when: When, id: Id) => {
    const part = parts.get(id);
    return when.switches?.[id] ?? (part?.kind === "switch" ? restPosition(part) : undefined);
  };
  const moved = [...Object.keys(a.switches ?? {}), ...Object.keys(b.switches ?? {})];
  return moved.every((id) => stands(a, id) === stands(b, id));
}
