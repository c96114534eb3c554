import type { Bits } from "./raster.ts";

/** One piece of ink whose pixels touch, corners too. Right and bottom are inside. */
export interface Component {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** Pixels of ink. */
  readonly area: number;
}

export interface Components {
  /** Of each pixel the number of its component in `list` plus one; 0 on paper. */
  readonly labels: Int32Array;
  readonly list: readonly Component[];
}

/**
 * Pieces of ink, in the order in which a reader meets their first pixel. Two passes over rows of
 * runs: runs that touch those above are one (Rosenfeld and Pfaltz 1966, with union by the smaller number).
 */
export function componentsOf({ width, height, data }: Bits): Components {
  const labels = new Int32Array(data.length);
  const parent: number[] = [0];
  const find = (of: number) => {
    let root = of;
    while (parent[root] !== root) root = parent[root] as number;
    for (let at = of; at !== root; ) {
      const next = parent[at] as number;
      parent[at] = root;
      at = next;
    }
    return root;
  };
  for (let y = 0; y < height; y++) {
    const row = y * width;
    for (let x = 0; x < width; x++) {
      if (!data[row + x]) continue;
      const start = x;
      while (x < width && data[row + x]) x++;
      let label = 0;
      if (y > 0) {
        const last = Math.min(width - 1, x);
        for (let above = Math.max(0, start - 1); above <= last; above++) {
          const touched = labels[row - width + above] as number;
          if (touched === 0) continue;
          const root = find(touched);
          if (label === 0) label = root;
          else if (root !== label) {
            const [low, high] = root < label ? [root, label] : [label, root];
            parent[high] = low;
            label = low;
          }
        }
      }
      if (label === 0) {
        label = parent.length;
        parent.push(label);
      }
      labels.fill(label, row + start, row + x);
    }
  }
  return numbered(
    labels,
    width,
    parent.map((_, label) => find(label)),
  );
}

/** Counts through the roots, and measures each piece. */
function numbered(labels: Int32Array, width: number, roots: readonly number[]): Components {
  const number = new Int32Array(roots.length);
  const list: { left: number; top: number; right: number; bottom: number; area: number }[] = [];
  for (let at = 0, x = 0, y = 0; at < labels.length; at++) {
    const label = labels[at] as number;
    if (label !== 0) {
      const root = roots[label] as number;
      let known = number[root] as number;
      if (known === 0) {
        list.push({ left: x, top: y, right: x, bottom: y, area: 0 });
        known = list.length;
        number[root] = known;
      }
      labels[at] = known;
      const piece = list[known - 1];
      if (piece) {
        piece.area++;
        if (x < piece.left) piece.left = x;
        if (x > piece.right) piece.right = x;
        piece.bottom = y;
      }
    }
    if (++x === width) {
      x = 0;
      y++;
    }
  }
  return { labels, list };
}
