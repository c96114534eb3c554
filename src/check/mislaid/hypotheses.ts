import { distance, type Point } from "../../base/index.ts";
import type { Cavity, Plug } from "../../job/index.ts";
import { mirrorPoint, otherSide, spacingOf } from "../../plug/index.ts";
import type { Hypothesis } from "./hypothesis.ts";

/** Share of the spacing within which a place marked by hand counts as the image, or as one row (our own). */
const NEAR = 0.3;

/** A plug of more cavities is none. */
const MOST_CAVITIES = 200;

/**
 * All that may have happened to this plug, the smallest first: two wires exchanged, a row off by
 * one, the face turned over. `odd` are the marks at which a reading is not as drawn: an exchange
 * moves each of them, so that of more than two none is left.
 */
export function hypothesesFor(plug: Plug, odd: readonly string[]): readonly Hypothesis[] {
  const marks = plug.cavities.map(({ mark }) => mark);
  const isClear = new Set(marks).size === marks.length && marks.length <= MOST_CAVITIES;
  if (!isClear || marks.length < 2) return [];
  return [...exchanges(marks, odd), ...shifts(plug), ...mirrored(plug)];
}

export const exchange = (a: string, b: string): Hypothesis => ({
  mishap: { is: "exchanged", a, b },
  really: new Map([
    [a, b],
    [b, a],
  ]),
});

function exchanges(marks: readonly string[], odd: readonly string[]): readonly Hypothesis[] {
  const [one, other, ...more] = odd;
  if (one === undefined || more.length > 0) return [];
  if (other !== undefined) {
    const [a, b] = marks.filter((mark) => mark === one || mark === other);
    return a === undefined || b === undefined ? [] : [exchange(a, b)];
  }
  const at = marks.indexOf(one);
  return marks.flatMap((mark, index) =>
    mark === one ? [] : [index < at ? exchange(mark, one) : exchange(one, mark)],
  );
}

/** Each row, and the whole plug in the order of its marks, one place on or back. */
function shifts(plug: Plug): readonly Hypothesis[] {
  const rows = rowsOf(plug);
  const whole = plug.cavities;
  const all = rows.length > 1 ? [...rows, whole] : rows;
  return all
    .filter((row) => row.length > 1)
    .flatMap((cavities) =>
      ([1, -1] as const).map((by): Hypothesis => {
        const row = cavities.map(({ mark }) => mark);
        return {
          mishap: { is: "shifted", row, by },
          really: new Map(row.map((mark, index) => [mark, row[index + by] ?? null])),
        };
      }),
    );
}

/** Cavities that stand beside one another, from left to right. */
function rowsOf({ cavities }: Plug): readonly (readonly Cavity[])[] {
  const near = spacingOf(cavities) * NEAR;
  const rows: Cavity[][] = [];
  for (const cavity of cavities.toSorted((a, b) => a.at[1] - b.at[1])) {
    const row = rows.at(-1);
    const above = row?.[0]?.at[1];
    if (row && above !== undefined && cavity.at[1] - above <= near) row.push(cavity);
    else rows.push([cavity]);
  }
  return rows.map((row) => row.toSorted((a, b) => a.at[0] - b.at[0]));
}

/** The face from its other side, where every cavity has its image in a place of its own. */
export function mirrored(plug: Plug): readonly Hypothesis[] {
  const seen = mirrorPoint(plug, otherSide(plug.side));
  const near = spacingOf(plug.cavities) * NEAR;
  const really = new Map<string, string>();
  for (const { mark, at } of plug.cavities) {
    const image: Point = seen(at);
    const there = plug.cavities.filter((one) => distance(one.at, image) <= near);
    const [only, another] = there;
    if (!only || another) return [];
    really.set(mark, only.mark);
  }
  const isOneToOne = new Set(really.values()).size === really.size;
  const moves = [...really].some(([mark, to]) => mark !== to);
  return isOneToOne && moves ? [{ mishap: { is: "mirrored" }, really }] : [];
}
