import type { Id, Position, When } from "../job/index.ts";
import { idsOff } from "./cavity-pins.ts";
import type { Shared } from "./shared.ts";

/**
 * Why no machine can be in this state: it names a switch, a position or a part that the circuit
 * does not have. One sentence, or null. A slip of the pen must not turn into a false prediction.
 */
export function impossibleWhen({ job, parts }: Shared, when: When): string | null {
  for (const [id, position] of Object.entries<Position>(when.switches ?? {})) {
    const part = parts.get(id);
    if (part?.kind !== "switch") return `The conditions name a switch ${id} that is not there.`;
    if (!part.positions.includes(position))
      return `Switch ${id} has no position ${position}: it has ${part.positions.join(", ")}.`;
  }
  const { standIn } = when;
  if (standIn !== undefined && !job.standIns?.some(({ id }) => id === standIn))
    return `The conditions name a stand-in ${standIn} that is not there.`;
  const isThere = (id: Id) => parts.has(id) || job.plugs.some((plug) => plug.id === id);
  const missing = idsOff(when).find((id) => !isThere(id));
  return missing === undefined ? null : `The conditions name ${missing}, which is not there.`;
}
