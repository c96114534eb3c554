import type { NetProposal, TraceDesk } from "../../../../session/index.ts";

/** The nets that the drawing lacks, but for those that the user leaves. */
export function proposalsShown(desk: TraceDesk): readonly NetProposal[] {
  const { left } = desk.get();
  const all = desk.difference()?.proposals ?? [];
  return left.size === 0 ? all : all.filter(({ net }) => !left.has(net.id));
}
