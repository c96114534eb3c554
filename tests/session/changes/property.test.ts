import "../../support/seed.ts";
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Random, seededRandom } from "../../../src/base/index.ts";
import { circuitOf } from "../../../src/circuit/index.ts";
import { type Job, PART_KINDS, pinIdsOf, pinRef, referenceIssues } from "../../../src/job/index.ts";
import {
  addPart,
  changesOf,
  createSession,
  drawnJob,
  drawnOf,
  goOnRecording,
  layWire,
  newRecording,
  putBack,
  removeThings,
  renamePart,
  replaceThing,
  type Session,
  splitWire,
  takeBackChange,
  whyNotId,
} from "../../../src/session/index.ts";
import { randomEdit } from "../../support/random-edit.ts";
import { randomJob } from "../../support/random-job.ts";

/** What a machine's circuit is, apart from where it is drawn and how its parts are called. */
function electrical(job: Job, machine: string): readonly string[] {
  const { parts, wires } = circuitOf(job, machine);
  const placed = new Set(["id", "at", "turn", "unit", "size", "sheet"]);
  const bare = (part: object) =>
    JSON.stringify(Object.entries(part).filter(([name]) => !placed.has(name)));
  return [...parts.map(bare).sort(), `${wires.length} wires`];
}

/** What of a job could not be opened again because of a machine's changes. */
const broken = (job: Job) =>
  referenceIssues(job).filter(
    ({ path, code }) =>
      code === "duplicate-id" || path.includes("changes") || path.startsWith("diagram.wires"),
  );

/** These and new plugs get ids by their own count, which does not see what a machine is without. */
const OWN_IDS = new Set(["Place a part", "Draw a wire", "Rename a part"]);

function edit(session: Session, random: Random): void {
  const { label, change } = randomEdit(random);
  if (label === "Draw a plug") return;
  if (!OWN_IDS.has(label)) {
    session.edit(label, change);
    return;
  }
  const { job, machine, sheet } = session.get();
  const { parts } = drawnJob(job, machine).diagram;
  const pins = parts.flatMap((part) => pinIdsOf(part).map((pin) => pinRef(part.id, pin)));
  session.edit(label, (draft) => {
    if (label === "Place a part") addPart(draft, random.pick(PART_KINDS), sheet ?? "", [5, 5]);
    else if (label === "Rename a part" && parts.length > 0) {
      const { id } = random.pick([...parts]);
      const next = `Q${random.below(9)}`;
      if (whyNotId(drawnJob(job, machine), id, next) === null) renamePart(draft, id, next);
    } else if (pins.length > 1) {
      const [from, to] = [random.pick(pins), random.pick(pins)];
      const corners = [[random.below(90), random.below(90)] as const];
      layWire(draft, {
        sheet: sheet ?? "",
        from: { on: "pin", ref: from },
        to: { on: "pin", ref: to },
        corners,
      });
    }
  });
}

function act(session: Session, random: Random): void {
  const { job, machine, recording } = session.get();
  const { parts, wires } = drawnOf(session.get()).diagram;
  const changes = changesOf(job, machine);
  const thing = parts.length > 0 ? random.pick([...parts]) : null;
  const wire = wires.length > 0 ? random.pick([...wires]) : null;
  switch (random.below(12)) {
    case 0:
      session.show({ machine: random.pick(job.machines).id });
      break;
    case 1:
      session.show({ recording: newRecording(job, machine, `Change ${random.below(100)}`) });
      break;
    case 2:
      if (changes.length > 0)
        session.show({ recording: goOnRecording(job, machine, random.below(changes.length)) });
      break;
    case 3:
      if (random.chance(0.3)) session.show({ recording: null });
      break;
    case 4:
      if (thing) session.edit("Delete", (draft) => removeThings(draft, [thing.id]));
      break;
    case 5:
      if (wire) session.edit("Split", (draft) => void splitWire(draft, wire.id, [50, 50]));
      break;
    case 6:
      if (recording && thing)
        session.edit("Replace", (draft) => void replaceThing(draft, thing.id));
      break;
    case 7: {
      const index = changes.findIndex(({ without }) => without?.length);
      const id = changes[index]?.without?.[0];
      if (id !== undefined && random.chance(0.5)) putBack(session, index, id);
      else if (changes.length > 0 && random.chance(0.3))
        takeBackChange(session, random.below(changes.length));
      break;
    }
    case 8:
      if (random.chance(0.3)) session.undo();
      break;
    default:
      edit(session, random);
  }
}

test("whatever is drawn, recorded and taken back, the file stays whole and undo leads to where it began", () => {
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const random = seededRandom(seed);
      const session = createSession("k", randomJob(random, { machines: 2 }));
      const start = session.get().job;
      expect(broken(start)).toEqual([]);
      for (let step = 0; step < 40; step++) {
        act(session, random);
        expect(broken(session.get().job)).toEqual([]);
      }
      while (session.get().history.done.length > 0) session.undo();
      expect(session.get().job).toEqual(start);
    }),
    { numRuns: 120 },
  );
});

test("what is recorded for one machine leaves every other machine's circuit as it was", () => {
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const random = seededRandom(seed);
      const session = createSession("k", randomJob(random, { machines: 2 }));
      const [mine, other] = session.get().job.machines.map(({ id }) => id) as [string, string];
      const before = electrical(session.get().job, other);
      session.show({ machine: mine });
      session.show({ recording: newRecording(session.get().job, mine, "Note") });
      for (let step = 0; step < 30; step++) {
        edit(session, random);
        if (session.get().recording === null) break;
        expect(electrical(session.get().job, other)).toEqual(before);
      }
    }),
    { numRuns: 120 },
  );
});
