/** Faces of plugs with marks in the usual orders (common practice, no source). */
import type { Random } from "../../../src/base/index.ts";
import type { Cavity, Plug } from "../../../src/job/index.ts";

const PITCH = 5;
/** Moulded letters leave out I, O and Q. */
const LETTERS = [..."ABCDEFGHJKLMNPRSTUVWXYZ"];

/** A plug with this many cavities, none of them empty. */
export function plugFace(random: Random, id: string, count: number): Plug {
  const columns = random.chance(0.3) ? count : Math.ceil(count / random.pick([2, 2, 3, 4]));
  const isLettered = count <= LETTERS.length && random.chance(0.4);
  const isRightToLeft = random.chance(0.3);
  const byColumn = random.chance(0.25);
  const rows = Math.ceil(count / columns);
  const cavities = Array.from({ length: count }, (_, index): Cavity => {
    const column = byColumn ? Math.floor(index / rows) : index % columns;
    const row = byColumn ? index % rows : Math.floor(index / columns);
    const x = (isRightToLeft ? columns - 1 - column : column) * PITCH;
    return {
      mark: isLettered ? (LETTERS[index] ?? "") : String(index + 1),
      at: [x, row * PITCH],
    };
  });
  return {
    id,
    side: random.pick(["mating", "wire"]),
    ...(random.chance(0.5) ? { holds: random.pick(["pins", "sockets"] as const) } : {}),
    cavities,
  };
}
