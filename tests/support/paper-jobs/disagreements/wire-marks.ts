import type { Wire } from "../../../../src/job/index.ts";
import type { PaperJob } from "../paper-job.ts";
import { type Disagreement, firstMachine, wiredPins } from "./disagreement.ts";

const drawnAt = ({ job }: PaperJob, pin: string): readonly Wire[] =>
  job.diagram.wires.filter(({ from, to }) => from === pin || to === pin);

/** Lines cut in two by the end of a page: the first end, and the wires on either side. */
function pageLines(paper: PaperJob) {
  const ends = new Map<string, string[]>();
  for (const part of paper.job.diagram.parts) {
    if (part.kind !== "offpage" || !part.label?.trim()) continue;
    const label = part.label.trim().toLowerCase();
    ends.set(label, [...(ends.get(label) ?? []), `${part.id}:1`]);
  }
  return [...ends.values()].flatMap(([end, partner, ...more]) => {
    if (end === undefined || partner === undefined || more.length > 0) return [];
    const [here, ...moreHere] = drawnAt(paper, end);
    const [there, ...moreThere] = drawnAt(paper, partner);
    if (!here || !there || moreHere.length + moreThere.length > 0) return [];
    return [{ end, wires: [here, there] as const }];
  });
}

export const WIRE_MARKS: readonly Disagreement[] = [
  {
    name: "another colour",
    inject(random, paper) {
      const { wires } = firstMachine(paper);
      const known = wiredPins(paper).filter(({ pin }) =>
        drawnAt(paper, pin).some(({ colour }) => colour),
      );
      if (known.length === 0) return null;
      const { pin, cavity } = random.pick(known);
      const drawn = drawnAt(paper, pin).flatMap(({ colour }) => colour ?? []);
      const free = (["TQ", "GD", "SR"] as const).map((base) => ({ base }));
      const turned = drawn.flatMap(({ base, tracer }) =>
        tracer ? [{ base: tracer, tracer: base }, { base }] : [{ base, tracer: "SR" as const }],
      );
      const differing = [...free, ...turned].filter(
        (one) =>
          !drawn.some(
            ({ base, tracer }) =>
              base === one.base && tracer === ("tracer" in one ? one.tracer : undefined),
          ),
      );
      const at = wires.findIndex((wire) => wire.cavity === cavity);
      if (at >= 0) wires.splice(at, 1);
      wires.push({ cavity, colour: random.pick(differing) });
      return [`colour-differs ${cavity}`];
    },
  },
  {
    name: "another colour past a page end",
    inject(random, paper) {
      const tied = new Set(paper.pins.flatMap(({ pin, cavity }) => (cavity === null ? [] : pin)));
      const lines = pageLines(paper).flatMap(({ end, wires: [here, there] }) =>
        [
          { end, changed: here, other: there },
          { end, changed: there, other: here },
        ].filter(({ changed }) => !tied.has(changed.from) && !tied.has(changed.to)),
      );
      if (lines.length === 0) return null;
      const { end, changed, other } = random.pick(lines);
      changed.colour = { base: "TQ" };
      other.colour ??= { base: "GN" };
      return [`colour-changes ${end}`];
    },
  },
  {
    name: "another number",
    inject(random, paper) {
      const { wires } = firstMachine(paper);
      const known = wiredPins(paper).filter(({ pin }) =>
        drawnAt(paper, pin).some(({ number }) => number !== undefined),
      );
      if (known.length === 0) return null;
      const { cavity } = random.pick(known);
      const at = wires.findIndex((wire) => wire.cavity === cavity);
      if (at >= 0) wires.splice(at, 1);
      wires.push({ cavity, number: `5${random.below(9000) + 1000}` });
      return [`number-differs ${cavity}`];
    },
  },
  {
    name: "a line that changes colour from page to page",
    inject(random, paper) {
      const pairs = pagePairs(paper);
      if (pairs.length === 0) return null;
      const { here, wires } = random.pick(pairs);
      // the wire at a module's pin keeps its colour, which the machine's wire is held against
      const isFree = ({ from, to }: Wire) => !/^A\d/.test(from) && !/^A\d/.test(to);
      const [changed, ...others] = [...wires].sort((a, b) => Number(isFree(b)) - Number(isFree(a)));
      const [other] = others;
      if (!changed || !other || !isFree(changed)) return null;
      if (!other.colour) return null;
      changed.colour = { base: other.colour.base === "YE" ? "BK" : "YE" };
      return [`colour-changes ${here}`];
    },
  },
];

/** Two page ends of one label, by the first one's pin, with the one wire at each. */
function pagePairs({ job }: PaperJob) {
  const { parts, wires } = job.diagram;
  const nameOf = (label: string | undefined) => (label ?? "").trim().toLowerCase();
  const ends = parts.filter((part) => part.kind === "offpage");
  return ends.flatMap((one, index) => {
    const other = ends.find(
      (end, at) =>
        at > index && nameOf(one.label) !== "" && nameOf(end.label) === nameOf(one.label),
    );
    const at = (id: string) => wires.filter(({ from, to }) => from === id || to === id);
    return other
      ? [{ here: `${one.id}:1`, wires: [...at(`${one.id}:1`), ...at(`${other.id}:1`)] }]
      : [];
  });
}
