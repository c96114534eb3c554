import { cavityRef, type Plug } from "../../job/index.ts";
import { LETTER_DIRECTION, LETTER_DIRECTION_SOURCE } from "../../standards/index.ts";
import type { MarksSay } from "./by-marks.ts";
import type { Evidence } from "./evidence.ts";
import type { Hypothesis } from "./hypothesis.ts";
import { isOneMove, type Mislaid } from "./mislaid.ts";
import { settledBy } from "./separating-reading.ts";
import type { Tally } from "./tally.ts";

/** `cavities 3 and 5 of plug X1 are exchanged`. */
export function mishapInWords({ plug }: Pick<Evidence, "plug">, { mishap }: Hypothesis): string {
  switch (mishap.is) {
    case "exchanged":
      return `cavities ${mishap.a} and ${mishap.b} of plug ${plug.id} are exchanged`;
    case "shifted":
      return `the row ${mishap.row[0]} to ${mishap.row.at(-1)} of plug ${plug.id} was read one place off: what was noted at ${example(mishap)}`;
    case "mirrored":
      return `the face of plug ${plug.id} was read from its other side`;
  }
}

function example({ row, by }: { row: readonly string[]; by: 1 | -1 }): string {
  const at = by === 1 ? 0 : 1;
  return `${row[at]} belongs to ${row[at + by]}`;
}

const counted = (count: number, one: string, many: string) =>
  `${count} ${count === 1 ? one : many}`;

/** `4 readings and 2 colours agree; as drawn 2 readings do not`. */
export function howSure(tally: Tally, drawn: Tally): string {
  const { agree, coloursAgree } = tally;
  const readings = agree > 0 ? [counted(agree, "reading", "readings")] : [];
  const colours = coloursAgree > 0 ? [counted(coloursAgree, "colour", "colours")] : [];
  const good = [...readings, ...colours].join(" and ");
  const agrees = agree + coloursAgree === 1 ? "agrees" : "agree";
  const not = [
    ...(drawn.differ > 0 ? [counted(drawn.differ, "reading", "readings")] : []),
    ...(drawn.coloursDiffer > 0 ? [counted(drawn.coloursDiffer, "colour", "colours")] : []),
  ].join(" and ");
  const does = drawn.differ + drawn.coloursDiffer === 1 ? "does" : "do";
  return `${good} ${agrees}; as drawn ${not} ${does} not`;
}

/** Cavities that it is about. */
export function subjectsOf(
  { plug }: Pick<Evidence, "plug">,
  { mishap }: Hypothesis,
): readonly string[] {
  switch (mishap.is) {
    case "exchanged":
      return [cavityRef(plug.id, mishap.a), cavityRef(plug.id, mishap.b)];
    case "shifted":
      return [plug.id, ...mishap.row.map((mark) => cavityRef(plug.id, mark))];
    case "mirrored":
      return [plug.id];
  }
}

/** What the marks of a face say by themselves, and what to look at. */
export function marksInWords({ id, side }: Plug, says: MarksSay): string {
  const look = `Read a mark moulded in the plug and see where it lies from the key or the latch, then turn the face over or correct the marks where they are wrong.`;
  if (says.is === "letters") {
    const other = says.holds === "pins" ? "sockets" : "pins";
    return `As drawn the letters of plug ${id} run ${says.run} from the key on its mating side, and it holds ${says.holds}. On round plugs with letters they run ${LETTER_DIRECTION.pins} where it holds pins and ${LETTER_DIRECTION.sockets} where it holds sockets (${LETTER_DIRECTION_SOURCE}). So the face may be drawn from its other side and not from the ${side} side, or the plug holds ${other}, or it is marked in its own way. ${look}`;
  }
  return `${says.agree} colours found at plug ${id} stand where ${says.standard} has them if the face was read from its other side, and none where it has them as drawn. ${look}`;
}

/** What settles it where it is not certain. */
export function settlingWords(evidence: Evidence, mislaid: Mislaid): string {
  const { explained, sure, separating } = mislaid;
  if (sure === "certain") return "";
  if (isOneMove(mislaid))
    return "No reading at the plug tells the two apart: look at the marks moulded in it.";
  const [{ hypothesis }, second] = explained;
  const ifOne = `if ${mishapInWords(evidence, hypothesis)}`;
  const ifOther = second ? `if ${mishapInWords(evidence, second.hypothesis)}` : "as drawn";
  return separating === null
    ? "No reading that a circuit like this allows was found to settle it: look at the wires in the plug and hold them against the drawing."
    : settledBy(evidence.job, separating, [ifOne, ifOther]);
}
