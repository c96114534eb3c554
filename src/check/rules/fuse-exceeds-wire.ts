import type { Wire } from "../../job/index.ts";
import { type FuseLimit, fuseLimit } from "../fuse-limit.ts";
import { defineRule, type FuseView } from "../rule.ts";
import { capital, nameOf } from "../words.ts";

export const fuseExceedsWire = defineRule({
  id: "fuse-exceeds-wire",
  severity: "warning",
  about: "fuse",
  find: (view) => {
    const { part, amps, before, conductors } = view;
    const worst = thinnest(view);
    if (!worst || amps <= worst.limit.fuseAmps) return [];
    // A smaller fuse before it, or one of which nobody knows the size, may protect the wire as well.
    const smaller = before.some(
      (one) =>
        !(one.kind === "fuse" || one.kind === "breaker") ||
        one.amps === undefined ||
        one.amps <= worst.limit.fuseAmps,
    );
    if (smaller) return [];
    const { wire, limit } = worst;
    const choose =
      conductors?.insulation === undefined
        ? " Say under Wires and fuses what insulation the machine's wires have, to hold it against the right column."
        : "";
    return [
      {
        subjects: [part.id, wire.id],
        message: `${capital(nameOf(part))} has ${amps} A, more than wire ${wire.id} (${
          limit.size
        }) behind it may have: ${limit.wireAmps} A by ${limit.by}, so a fuse of at most ${
          limit.fuseAmps
        } A (150 %, 33 CFR 183.455).${choose}`,
        because: [part.id, wire.id],
      },
    ];
  },
});

/** The wire that lets the fuse have the least; the first of several. */
function thinnest({ wires, conductors }: FuseView) {
  let worst: { readonly wire: Wire; readonly limit: FuseLimit } | null = null;
  for (const wire of wires) {
    const limit = fuseLimit(wire, conductors);
    if (limit && (!worst || limit.fuseAmps < worst.limit.fuseAmps)) worst = { wire, limit };
  }
  return worst;
}
