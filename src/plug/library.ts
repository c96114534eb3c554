import { TRAILER_PLUGS, type TrailerPlug } from "../standards/index.ts";
import { type Arrangement, RELAY_MARKS, ringsByPitch } from "./arrangement.ts";
import type { FacePlan } from "./face.ts";
import type { MarkStyle } from "./marks.ts";
import { USUAL_ORDER } from "./order.ts";

/** A ready-made face to start from: how its cavities lie and how they are marked. */
export interface LibraryFace {
  readonly id: string;
  readonly group: LibraryGroup;
  readonly name: string;
  readonly plan: FacePlan;
  /** The published table that its marks are from; its cavities then lie in a neutral drawing. */
  readonly published?: TrailerPlug;
}

export type LibraryGroup =
  | "Rows"
  | "Staggered rows"
  | "Round"
  | "Relay sockets"
  | "Trailer and brake plugs";

/** What must stand beside a face whose marks are known and whose places are not. */
export const NEUTRAL_PLACES_NOTE =
  "Positions are a neutral drawing: go by the moulded marks, never by where a cavity is drawn.";

/** Millimetres from cavity to cavity; a look, not a measure. */
const PITCH = 5;

const NUMBERS: MarkStyle = { style: "numbers", first: 1 };
const PLAIN = { marks: NUMBERS, order: USUAL_ORDER, housing: "rectangle", key: null } as const;

const grid = (rows: number, columns: number): LibraryFace => ({
  id: `grid-${rows}x${columns}`,
  group: "Rows",
  name: `${rows} × ${columns}`,
  plan: {
    ...PLAIN,
    arrangement: { kind: "grid", rows, columns, pitch: [PITCH, PITCH] },
    latch: "top",
  },
});

const staggered = (rows: number, columns: number): LibraryFace => ({
  id: `staggered-${rows}x${columns}`,
  group: "Staggered rows",
  name: `${rows} rows of ${columns} and ${columns - 1}`,
  plan: {
    ...PLAIN,
    arrangement: {
      kind: "staggered",
      rows,
      columns,
      pitch: [PITCH, PITCH],
      shift: "right",
      nested: true,
    },
    latch: "top",
  },
});

const rings = (counts: readonly number[], centre: boolean): Arrangement => ({
  kind: "rings",
  rings: ringsByPitch(counts, PITCH, centre, 0),
  centre,
});

const round = (counts: readonly number[], centre: boolean): LibraryFace => {
  const total = counts.reduce((sum, count) => sum + count, centre ? 1 : 0);
  const words = [...counts.map((count) => `ring of ${count}`), ...(centre ? ["middle"] : [])];
  return {
    id: `round-${total}`,
    group: "Round",
    name: `${total}: ${words.join(", ")}`,
    plan: {
      arrangement: rings(counts, centre),
      marks: NUMBERS,
      order: USUAL_ORDER,
      housing: "circle",
      latch: null,
      key: "top",
    },
  };
};

/** The two layouts of mini relays exchange 30 and 86; terminal numbers are those of DIN 72552. */
const relay = (layout: "30-below" | "86-below", name: string): LibraryFace => ({
  id: `relay-${layout}`,
  group: "Relay sockets",
  name,
  plan: {
    arrangement: { kind: "relay", layout },
    marks: { style: "typed", marks: RELAY_MARKS },
    order: USUAL_ORDER,
    housing: "rectangle",
    latch: null,
    key: null,
  },
});

/** Rings that hold as many cavities as a published table has pins; OURS, not the standard's drawing. */
const NEUTRAL_RINGS: Readonly<Record<number, readonly [counts: number[], centre: boolean]>> = {
  7: [[6], true],
  12: [[9, 3], false],
  13: [[9, 4], false],
  15: [[10, 5], false],
};

const trailer = (published: TrailerPlug): LibraryFace => {
  const marks = published.pins.map((pin) => pin.mark);
  const [counts, centre] = NEUTRAL_RINGS[marks.length] ?? [[marks.length], false];
  const numbered = marks.every((mark, index) => mark === String(index + 1));
  return {
    id: published.standard.toLowerCase().replaceAll(" ", "-"),
    group: "Trailer and brake plugs",
    name: `${published.standard} · ${published.name}`,
    published,
    plan: {
      arrangement: rings(counts, centre),
      marks: numbered ? NUMBERS : { style: "typed", marks },
      order: USUAL_ORDER,
      housing: "circle",
      latch: null,
      // Where the key of the housing sits is not in the tables either.
      key: null,
    },
  };
};

export const FACE_LIBRARY: readonly LibraryFace[] = [
  ...[2, 3, 4, 6, 8].map((columns) => grid(1, columns)),
  ...[1, 2, 3, 4, 5, 6, 8, 10, 12].map((columns) => grid(2, columns)),
  ...[3, 4, 5, 6, 8, 10].map((columns) => grid(3, columns)),
  ...[4, 6, 8, 10, 12].map((columns) => grid(4, columns)),
  staggered(2, 4),
  staggered(3, 4),
  staggered(3, 8),
  round([4], false),
  round([7], false),
  round([9, 3], false),
  round([8, 4], true),
  round([10, 5], false),
  relay("30-below", "Mini relay, 30 below"),
  relay("86-below", "Mini relay, 86 below"),
  ...TRAILER_PLUGS.map(trailer),
];
