/** Slips of the tracing: lines left out, joined wrongly, or led past their fuse. */
import type { Part, PartKindName } from "../../../../src/job/index.ts";
import type { PaperJob, TruePin } from "../paper-job.ts";
import { type Disagreement, type Expected, ownerOf, wiredPins } from "./disagreement.ts";

/** A part more, of an id that nothing else has. */
function addPart({ job }: PaperJob, kind: PartKindName, fields: object = {}): string {
  const id = `N${job.diagram.parts.length + 1}`;
  job.diagram.parts.push({ kind, id, sheet: "sheet1", at: [10, 10], turn: 0, ...fields } as Part);
  return id;
}

/** Wires as a chain of pins. */
function addWires({ job }: PaperJob, ...pins: readonly string[]): void {
  for (let n = 0; n + 1 < pins.length; n++) {
    const id = `NW${job.diagram.wires.length + 1}`;
    job.diagram.wires.push({ id, from: pins[n] ?? "", to: pins[n + 1] ?? "" });
  }
}

const fused = (paper: PaperJob): string => addPart(paper, "fuse", { amps: 5 });
const lamp = (paper: PaperJob): string => addPart(paper, "lamp", { watts: 5 });
const ground = (paper: PaperJob): string => `${addPart(paper, "ground")}:1`;

/** Takes a wire away and says which of its ends now end nowhere. */
function leaveOut({ job }: PaperJob, wire: string): Expected {
  const gone = job.diagram.wires.find(({ id }) => id === wire);
  if (!gone) throw new Error(`no wire ${wire}`);
  job.diagram.wires = job.diagram.wires.filter((one) => one !== gone);
  return [gone.from, gone.to].map((end) => `loose-end ${ownerOf(end)}`);
}

/** Pins that lead to a sender, or to a lamp that is a diode, and to nothing else. */
const isOfOneLoad = ({ inside, bearsLamp, isOhmic }: TruePin): boolean =>
  (inside === "input-low" && !bearsLamp) || (inside === "output-high" && !isOhmic);

const SLIPS: readonly Disagreement[] = [
  {
    name: "a line cut at the end of a page",
    inject(random, paper) {
      const some = wiredPins(paper).filter(isOfOneLoad);
      if (some.length === 0) return null;
      const { pin } = random.pick(some);
      const wire = paper.job.diagram.wires.find(({ from, to }) => from === pin || to === pin);
      if (!wire) throw new Error(`no wire at ${pin}`);
      const far = wire.from === pin ? wire.to : wire.from;
      addWires(paper, `${addPart(paper, "offpage")}:1`, far);
      Object.assign(wire, { from: pin, to: `${addPart(paper, "offpage")}:1` });
      return [`role-undecided ${pin}`];
    },
  },
  {
    name: "a feed left out",
    inject(random, paper) {
      const { part, feedWire } = random.pick(paper.freeLoads);
      return [...leaveOut(paper, feedWire), `no-supply ${part}`];
    },
  },
  {
    name: "a return left out",
    inject(random, paper) {
      const { part, returnWire } = random.pick(paper.freeLoads);
      return [...leaveOut(paper, returnWire), `no-return ${part}`];
    },
  },
  {
    name: "a load between two grounds",
    inject(_, paper) {
      const load = lamp(paper);
      addWires(paper, ground(paper), `${load}:1`);
      addWires(paper, `${load}:2`, ground(paper));
      return [`no-supply ${load}`];
    },
  },
  {
    name: "a load between two feeds",
    inject(_, paper) {
      const load = lamp(paper);
      const [one, other] = [fused(paper), fused(paper)];
      addWires(paper, "G1:+", `${one}:1`);
      addWires(paper, `${one}:2`, `${load}:1`);
      addWires(paper, "G1:+", `${other}:1`);
      addWires(paper, `${other}:2`, `${load}:2`);
      return [`no-return ${load}`];
    },
  },
  {
    name: "a line that stops at a splice",
    inject(random, paper) {
      const splice = addPart(paper, "splice");
      addWires(paper, random.pick([paper.keyBus, paper.mainBus]).pin, `${splice}:1`);
      return [`loose-end ${splice}`];
    },
  },
  {
    name: "a load with one wire",
    inject(random, paper) {
      const load = lamp(paper);
      if (random.chance(0.5)) {
        const fuse = fused(paper);
        addWires(paper, paper.mainBus.pin, `${fuse}:1`);
        addWires(paper, `${fuse}:2`, `${load}:${random.pick(["1", "2"])}`);
        return [`loose-end ${load}`, `no-return ${load}`];
      }
      addWires(paper, `${load}:${random.pick(["1", "2"])}`, ground(paper));
      return [`loose-end ${load}`, `no-supply ${load}`];
    },
  },
  {
    name: "a contact straight to ground",
    inject(random, paper) {
      const fuse = fused(paper);
      const contact = addPart(paper, "switch", {
        control: random.pick(["operator", "limit", "interlock"]),
        positions: ["rest", "worked"],
        rest: "rest",
        contacts: [{ between: ["1", "2"], closedIn: [random.pick(["rest", "worked"])] }],
      });
      addWires(paper, random.pick([paper.keyBus, paper.mainBus]).pin, `${fuse}:1`);
      addWires(paper, `${fuse}:2`, `${contact}:1`);
      addWires(paper, `${contact}:2`, ground(paper));
      return ["dead-short G1:+"];
    },
  },
  {
    name: "a relay's contact straight to ground",
    inject(_, paper) {
      const relay = addPart(paper, "relay", { coilOhms: 90 });
      addWires(paper, paper.keyBus.pin, `${relay}:86`);
      addWires(paper, `${relay}:85`, ground(paper));
      addWires(paper, paper.mainBus.pin, `${relay}:30`);
      addWires(paper, `${relay}:87`, ground(paper));
      return ["dead-short G1:+"];
    },
  },
  {
    name: "a load before every fuse",
    inject(_, paper) {
      const load = lamp(paper);
      addWires(paper, "G1:+", `${load}:1`);
      addWires(paper, `${load}:2`, ground(paper));
      return ["unfused-supply G1:+"];
    },
  },
  {
    name: "no line traced yet",
    // What every pin and cavity is then said to be is another matter.
    rules: ["nothing-traced", "loose-end", "no-supply", "no-return", "dead-short"],
    inject(_, { job }) {
      job.diagram.wires = [];
      const module = job.diagram.parts.find(({ kind }) => kind === "module");
      return module ? [`nothing-traced ${module.id}`] : null;
    },
  },
];

export const TRACING: readonly Disagreement[] = SLIPS.map((slip) => ({
  ...slip,
  forgetsReadings: true,
}));
