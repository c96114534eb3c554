import type { Part } from "../../../../src/job/index.ts";
import type { PaperJob } from "../paper-job.ts";
import type { Disagreement } from "./disagreement.ts";

const partOf = ({ job }: PaperJob, id: string): Part => {
  const part = job.diagram.parts.find((one) => one.id === id);
  if (!part) throw new Error(`no part ${id}`);
  return part;
};

export const FUSES: readonly Disagreement[] = [
  {
    name: "a fuse far too large for its wire",
    forgetsReadings: true,
    inject(random, paper) {
      // a smaller fuse before it would protect the wire as well
      const alone = paper.freeLoads.filter(({ isKeyed }) => !isKeyed);
      if (alone.length === 0) return null;
      const { fuse, feedWire } = random.pick(alone);
      const wire = paper.job.diagram.wires.find(({ id }) => id === feedWire);
      // half a square millimetre: neither that fuse nor the machine's main one protects it by any table
      Object.assign(wire ?? {}, { mm2: 0.5, metres: 2 });
      Object.assign(partOf(paper, fuse), { amps: 100 });
      return [`fuse-exceeds-wire ${fuse}`];
    },
  },
  {
    name: "a load that draws more than its fuse",
    forgetsReadings: true,
    inject(random, paper) {
      const { fuse, part } = random.pick(paper.freeLoads);
      Object.assign(partOf(paper, fuse), { amps: 1 });
      Object.assign(partOf(paper, part), { watts: 70 });
      return [`fuse-below-load ${fuse}`];
    },
  },
];
