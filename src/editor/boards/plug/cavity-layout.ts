import { formatColour } from "../../../standards/index.ts";
import type { CavityFacts } from "./cavity-facts.ts";
import { textWidth } from "./use-fonts.ts";

/** No word on the board is smaller than this, pixels. */
const SMALLEST_LABEL = 14;

interface Label {
  readonly text: string;
  readonly size: number;
  readonly style: string;
}

/** Lengths and words of one cavity on the board, pixels from its middle. */
export interface CavityLayout {
  readonly radius: number;
  readonly mark: number;
  readonly wire: number;
  /** How far the wire reaches out of the opening. */
  readonly stub: number;
  readonly badge: number;
  readonly code: (Label & { readonly under: boolean }) | null;
  readonly pin: Label | null;
}

/** A colour only read off the diagram leans: nobody has seen it on this machine yet. */
const codeStyle = (facts: CavityFacts) => (facts.colourFrom === "diagram" ? "italic 500" : "600");

/**
 * Sizes for neighbours `spacing` pixels apart. The colour's code stands beside the wire, else
 * under it, the tied pin on the wire's other side; neither runs into what a neighbour says, and
 * what finds no room at a legible size waits for a closer look.
 */
export function layoutOf(facts: CavityFacts, spacing: number): CavityLayout {
  const radius = Math.min(40, spacing * 0.27);
  const label = Math.max(SMALLEST_LABEL, Math.min(18, spacing * 0.15));
  const wire = Math.max(8, Math.min(16, spacing * 0.13));
  const stub = Math.min(44, spacing * 0.26);
  const room = spacing / 2 - besideWire(wire) - 2;
  const code = facts.colour ? codeLabel(facts, label, room, spacing) : null;
  const pinRoom = code === null ? spacing - 4 : code.under ? 0 : room;
  return {
    radius,
    mark: Math.max(12, Math.min(26, radius * 0.88)),
    wire,
    stub: code?.under ? Math.max(2, spacing - 2 * radius - code.size - 4) : stub,
    badge: Math.max(6, Math.min(12, spacing * 0.1)),
    code,
    pin: facts.pin === null ? null : fitting(facts.pin, label, "400", pinRoom),
  };
}

/** Pixels from the middle of a wire to what is written beside it. */
export const besideWire = (wire: number) => wire / 2 + 4;

function codeLabel(
  facts: CavityFacts,
  size: number,
  room: number,
  spacing: number,
): CavityLayout["code"] {
  if (!facts.colour) return null;
  const text = formatColour(facts.colour);
  const style = codeStyle(facts);
  const beside = fitting(text, size, style, room);
  if (beside) return { ...beside, under: false };
  const under = fitting(text, size, style, spacing - 4);
  return under && { ...under, under: true };
}

/** The text at the largest legible size that keeps within `room`; null when there is none. */
function fitting(text: string, largest: number, style: string, room: number): Label | null {
  const width = textWidth(text, largest, style);
  const size = width <= room ? largest : (largest * room) / width;
  return size >= SMALLEST_LABEL ? { text, size, style } : null;
}
