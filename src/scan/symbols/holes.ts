import type { Point } from "../../base/index.ts";
import { type Component, type Components, componentsOf } from "../components.ts";
import { bitsOf } from "../raster.ts";
import type { SymbolPage } from "./symbol-page.ts";

/** Paper shut in by lines. */
export interface Hole extends Component {
  readonly label: number;
}

export interface Holes {
  readonly labels: Components["labels"];
  readonly list: readonly Hole[];
}

export function holesOf({ ink, width, height }: SymbolPage): Holes {
  const paper = bitsOf(width, height);
  for (let at = 0; at < paper.data.length; at++) paper.data[at] = ink.data[at] ? 0 : 1;
  const { labels, list } = componentsOf(paper);
  return {
    labels,
    list: list
      .map((one, n) => ({ ...one, label: n + 1 }))
      .filter(
        ({ left, top, right, bottom }) =>
          left > 0 && top > 0 && right < width - 1 && bottom < height - 1,
      ),
  };
}

export const middleOf = ({ left, top, right, bottom }: Component): Point => [
  (left + right) / 2,
  (top + bottom) / 2,
];

export const sizeOf = ({ left, top, right, bottom }: Component): Point => [
  right - left + 1,
  bottom - top + 1,
];
