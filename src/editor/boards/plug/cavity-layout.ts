import { type Box, boxAt, type Point } from "../../../base/index.ts";
import { formatColour } from "../../../standards/index.ts";
import type { CavityFacts } from "./cavity-facts.ts";
import { liveTag } from "./live-badge.tsx";
import { textWidth } from "./use-fonts.ts";

/** No word on the board is smaller than this, pixels. */
const SMALLEST_LABEL = 14;

/** A word, its top left corner in pixels from the middle of its cavity. */
export interface Label {
  readonly text: string;
  readonly size: number;
  readonly style: string;
  readonly x: number;
  readonly y: number;
}

/** Lengths and words of one cavity on the board, pixels. */
export interface CavityLayout {
  readonly radius: number;
  readonly mark: number;
  readonly wire: number;
  /** How far the wire reaches out of the opening. */
  readonly stub: number;
  /** Half the width of the verdict's badge, and its middle from that of the cavity. */
  readonly badge: number;
  readonly badgeAt: Point;
  readonly code: Label | null;
  readonly pin: Label | null;
}

export interface PlacedCavity {
  readonly facts: CavityFacts;
  /** Pixels. */
  readonly at: Point;
}

interface Tag {
  readonly text: string;
  readonly style: string;
}

const codeOf = (facts: CavityFacts): Tag | null =>
  facts.colour && { text: formatColour(facts.colour), style: codeStyle(facts) };

/** What must find a place: what the cavity carries while that is known, else its wire's colour. */
const chiefTag = (facts: CavityFacts): Tag | null =>
  facts.live ? { text: liveTag(facts.live), style: "600" } : codeOf(facts);

/** What takes a place that is left. */
const otherTag = (facts: CavityFacts): Tag | null =>
  facts.live ? codeOf(facts) : facts.pin === null ? null : { text: facts.pin, style: "400" };

/** Where a word might stand: its top left corner, and how long the wire beside or over it is. */
interface Spot {
  readonly x: number;
  readonly y: number;
  readonly stub: number;
}

const overlaps = (a: Box, b: Box) =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

interface Disc {
  readonly at: Point;
  readonly radius: number;
}

const covers = ({ at: [x, y], radius }: Disc, box: Box) =>
  Math.hypot(
    x - Math.max(box.left, Math.min(box.right, x)),
    y - Math.max(box.top, Math.min(box.bottom, y)),
  ) < radius;

/** Pixels between two things that must not touch. */
const GAP = 2;

/** Between a cavity's volts and its neighbour's colour, pixels: the two must not read as one. */
const APART = 9;

/** How far from the outermost cavities a word may reach, parts of the spacing. */
const WALL = 0.75;

const MOST_ROUNDS = 5;

/** A colour only read off the diagram leans: nobody has seen it on this machine yet. */
const codeStyle = (facts: CavityFacts) => (facts.colourFrom === "diagram" ? "italic 500" : "600");

/**
 * Lays out a face whose nearest neighbours are `spacing` pixels apart. A colour's code stands
 * beside its wire, else under it; the tied pin where there is room left. No word lies on an
 * opening, a verdict, a wire or another word: what finds no such place at a legible size waits for
 * a closer look. The codes come first, then the pins, where most of them find a place.
 */
export function layOutFace(
  cavities: readonly PlacedCavity[],
  spacing: number,
): readonly CavityLayout[] {
  const radius = Math.min(40, spacing * 0.27);
  const largest = Math.max(SMALLEST_LABEL, Math.min(18, spacing * 0.15));
  const sizes = [...new Set([largest, SMALLEST_LABEL])];
  const wire = Math.max(8, Math.min(16, spacing * 0.13));
  const stub = Math.min(44, spacing * 0.26);
  const badge = Math.max(6, Math.min(12, spacing * 0.1));
  const badgeAt: Point = [radius * 0.82, -radius * 0.82];
  const beside = wire / 2 + 4;

  const discs = cavities.flatMap(({ facts, at }): Disc[] => [
    // A blade's opening is a little longer than round ones are wide.
    { at, radius: radius * 1.08 },
    ...(facts.verdict || facts.live
      ? [{ at: [at[0] + badgeAt[0], at[1] + badgeAt[1]] as const, radius: badge * 1.25 }]
      : []),
  ]);
  // Beyond the outermost cavities the housing's wall is near.
  const across = cavities.map(({ at }) => at[0]);
  const [leftmost, rightmost] = [
    Math.min(...across) - WALL * spacing,
    Math.max(...across) + WALL * spacing,
  ];
  let wires: (Box | null)[] = [];
  let words: Box[] = [];

  const place = (
    index: number,
    text: string,
    style: string,
    spots: (width: number, size: number) => readonly Spot[],
    gap = GAP,
  ): (Label & { readonly stub: number }) | null => {
    const [cx, cy] = cavities[index]?.at ?? [0, 0];
    for (const size of sizes) {
      const width = textWidth(text, size, style);
      for (const spot of spots(width, size)) {
        const left = cx + spot.x;
        const top = cy + spot.y;
        const box = { left, top, right: left + width, bottom: top + size };
        // Above and below its letters a line of type has room of its own.
        const roomy = {
          left: left - gap,
          top: top + size * 0.1,
          right: box.right + gap,
          bottom: box.bottom - size * 0.1,
        };
        const meets = (other: Box | null) => other !== null && overlaps(roomy, other);
        if (box.left < leftmost || box.right > rightmost) continue;
        // Its own wire gives way where the word is put under it.
        const own = spot.stub < stub ? index : -1;
        if (discs.some((disc) => covers(disc, roomy)) || words.some(meets)) continue;
        if (wires.some((one, at) => at !== own && meets(one))) continue;
        words.push(box);
        if (own === index) {
          wires[index] = boxAt([cx, cy + radius + spot.stub / 2], wire / 2 + 1, spot.stub / 2);
        }
        return { text, size, style, ...spot };
      }
    }
    return null;
  };

  const besideWire = (size: number, x: number): readonly Spot[] =>
    [Math.max(3, stub - size), 3].map((below) => ({ x, y: radius + below, stub }));
  const rightOf = (size: number) => besideWire(size, beside);
  const leftOf = (width: number, size: number) => besideWire(size, -beside - width);
  const underWire = (width: number, size: number): readonly Spot[] =>
    [-width / 2, -width + wire / 2, -wire / 2].flatMap((x) =>
      [spacing - 2 * radius - size - 4, 6, 2]
        .map((length) => Math.max(2, Math.min(stub - 1, length)))
        .map((short) => ({ x, y: radius + short + 2, stub: short })),
    );

  const alone = (width: number): readonly Spot[] => [{ x: -width / 2, y: radius + 5, stub }];

  const placeCodes = (order: readonly number[]) => {
    wires = cavities.map(({ facts, at: [x, y] }) =>
      facts.colour ? boxAt([x, y + radius + stub / 2], wire / 2 + 1, stub / 2) : null,
    );
    words = [];
    const codes: ReturnType<typeof place>[] = cavities.map(() => null);
    for (const index of order) {
      const facts = cavities[index]?.facts;
      const tag = facts ? chiefTag(facts) : null;
      if (!facts || !tag) continue;
      codes[index] = place(index, tag.text, tag.style, (width, size) =>
        facts.colour
          ? [...rightOf(size), ...underWire(width, size), ...leftOf(width, size)]
          : alone(width),
      );
    }
    return codes;
  };
  // Those that found no place choose first the next time, and leave the others what is left.
  let order: readonly number[] = cavities.map((_, index) => index);
  let codes = placeCodes(order);
  for (let round = 1; round < MOST_ROUNDS; round++) {
    const without = order.filter((index) => {
      const facts = cavities[index]?.facts;
      return facts && chiefTag(facts) && !codes[index];
    });
    if (without.length === 0) break;
    order = [...without, ...order.filter((index) => !without.includes(index))];
    codes = placeCodes(order);
  }
  const placed = cavities.map(({ facts }, index) => {
    const tag = otherTag(facts);
    return (
      tag &&
      place(
        index,
        tag.text,
        tag.style,
        (width, size) => (facts.colour ? [...leftOf(width, size), ...rightOf(size)] : alone(width)),
        facts.live ? APART : GAP,
      )
    );
  });
  // A pin beside one cavity in six reads as if that one were special: then none is written.
  const wanted = cavities.filter(({ facts }) => otherTag(facts) !== null).length;
  const isMost = 2 * placed.filter(Boolean).length >= wanted;
  const pins = placed.map((label) => (isMost ? label : null));
  return cavities.map((_, index) => ({
    radius,
    mark: Math.max(12, Math.min(26, radius * 0.88)),
    wire,
    stub: codes[index]?.stub ?? stub,
    badge,
    badgeAt,
    code: codes[index] ?? null,
    pin: pins[index] ?? null,
  }));
}
