/** What was noted at the wrong cavities, put right by one edit: nothing is odd any more after it. */
import { expect, test } from "vitest";
import { type Correction, checkJob } from "../../../src/check/index.ts";
import type { Job, Reading } from "../../../src/job/index.ts";
import { correct, correctionsAbout, createSession } from "../../../src/session/index.ts";
import { measuredAs, ohms, volts } from "../../support/four-way-plug.ts";

/** Seen from the other side: 4 is the feed's image, 3 the ground's. */
const turned = () =>
  measuredAs([volts("4", 25.1), volts("1", 0.01), ohms("1", 20.3), ohms("3", 0.2)], {
    "4": "RD",
    "1": "BU",
  });
const exchanged = () => measuredAs([volts("1", 0.01), volts("3", 25.1), ohms("2", 0.2)]);
const shifted = () =>
  measuredAs([volts("2", 25.1), volts("3", 0.01), ohms("3", 0.2), ohms("4", 8.1)]);

const odd = (job: Job) =>
  checkJob(job, job.machines[0]?.id ?? "").findings.filter(({ rule }) =>
    /^(face-mirrored|cavities-swapped|row-off-by-one|mislaid-undecided|reading-unexpected|colour-differs)$/.test(
      rule,
    ),
  );

function putRight(job: Job, rule: string, does: Correction["does"]) {
  const session = createSession("mislaid", job);
  const found = odd(session.get().job).find((one) => one.rule === rule);
  const one = found?.corrections?.find((correction) => correction.does === does);
  if (!one) throw new Error(`${rule} does not offer ${does}`);
  const before = session.get().job;
  correct(session, one);
  const after = session.get().job;
  session.undo();
  expect(session.get().job).toEqual(before);
  return { before, after };
}

const placesOf = ({ machines: [machine] }: Job) =>
  machine?.readings.map(({ id, red }: Reading) => `${id} ${red}`);

test("a face read from its other side: what was noted goes to the images, and the face stays", () => {
  const { before, after } = putRight(turned(), "face-mirrored", "move-notes");
  expect(odd(after)).toEqual([]);
  expect(after.plugs).toEqual(before.plugs);
  expect(placesOf(after)).toEqual(["V4 X1:1", "V1 X1:4", "O1 X1:4", "O3 X1:2"]);
  expect(after.machines[0]?.wires.map(({ cavity }) => cavity).toSorted()).toEqual(["X1:1", "X1:4"]);
});

test("a face drawn from the wrong side: it is turned over, and what was found by its places goes with it", () => {
  const { before, after } = putRight(turned(), "face-mirrored", "flip-face");
  expect(odd(after)).toEqual([]);
  expect(after.plugs[0]).toEqual({ ...before.plugs[0], side: "mating" });
  expect(placesOf(after)).toEqual(["V4 X1:1", "V1 X1:4", "O1 X1:4", "O3 X1:2"]);
});

test("what was noted on other machines stays where it was", () => {
  const job = turned();
  job.machines.push({
    id: "M2",
    name: "Another",
    wires: [],
    readings: [volts("1", 25)],
    trials: [],
  });
  const { before, after } = putRight(job, "face-mirrored", "flip-face");
  expect(after.machines[1]).toEqual(before.machines[1]);
});

test("two cavities: what is tied to them is exchanged, or what was noted at them, never both", () => {
  const ties = putRight(exchanged(), "cavities-swapped", "exchange-cavities");
  expect(odd(ties.after)).toEqual([]);
  expect(ties.after.machines).toEqual(ties.before.machines);
  const notes = putRight(exchanged(), "cavities-swapped", "move-notes");
  expect(odd(notes.after)).toEqual([]);
  expect(notes.after.links).toEqual(notes.before.links);
});

test("a row off by one goes back one place", () => {
  const { after } = putRight(shifted(), "row-off-by-one", "move-notes");
  expect(odd(after)).toEqual([]);
  expect(placesOf(after)).toEqual(["V2 X1:1", "V3 X1:2", "O3 X1:2", "O4 X1:3"]);
});

test("while a face may be read from its other side, nothing noted there is offered to the drawing", () => {
  const { findings } = checkJob(turned(), turned().machines[0]?.id ?? "");
  const colour = findings.find(({ rule }) => rule === "colour-differs");
  expect(colour?.corrections?.map(({ does }) => does)).toContain("take-colour");
  const here = new Set(colour?.subjects ?? []);
  expect(correctionsAbout(findings, here).map(({ does }) => does)).not.toContain("take-colour");
  const believed = findings.map((one) =>
    one.rule === "face-mirrored" ? { ...one, setAside: "looked at twice" } : one,
  );
  expect(correctionsAbout(believed, here).map(({ does }) => does)).toContain("take-colour");
});
