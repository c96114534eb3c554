import { Groups } from "../base/index.ts";
import type { Branch } from "../circuit/index.ts";

/** Whether a way leads from one node to the other along those of these branches that count. */
export function tied(
  branches: readonly Branch[],
  counts: (branch: Branch, index: number) => boolean,
  red: number,
  black: number,
): boolean {
  const most = branches.reduce((node, { a, b }) => Math.max(node, a, b), Math.max(red, black));
  const groups = new Groups(most + 1);
  for (const [index, branch] of branches.entries())
    if (counts(branch, index)) groups.join(branch.a, branch.b);
  return groups.of(red) === groups.of(black);
}
