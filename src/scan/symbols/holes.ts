import type { Point } from "../../base/index.ts";
import { type Component, type Components, components } from "../components.ts";
import { asPart, type Sliced } from "../sliced.ts";
import { inverse, type SymbolPage } from "./symbol-page.ts";

/** Paper shut in by lines. */
export interface Hole extends Component {
  readonly label: number;
}

export interface Holes {
  readonly labels: Components["labels"];
  readonly list: readonly Hole[];
}

export function* holesOf({ ink, width, height }: SymbolPage): Sliced<Holes> {
  const paper = yield* asPart(inverse(ink), 0, 0.2);
  const { labels, list } = yield* asPart(components(paper), 0.2, 1);
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
