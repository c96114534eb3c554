import { expect, test } from "vitest";
import { seededRandom } from "../../src/base/index.ts";
import { checkJob } from "../../src/check/index.ts";
import { findingsOf, pageExamples } from "../support/check-example.ts";
import { fourWays, measuredAs, ohms, volts } from "../support/four-way-plug.ts";
import { mislaidJob } from "../support/mislaid-job.ts";

/** One seed for the whole run; `PINTRUTH_SEED` tries another. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 20261127);

const RULE = "face-mirrored";
const CERTAIN = [RULE, "cavities-swapped", "row-off-by-one"];

test("the page's examples: it speaks, and it is silent", () => {
  const { speaks, silent } = pageExamples(RULE);
  expect(findingsOf(RULE, speaks)).not.toEqual([]);
  expect(findingsOf(RULE, silent)).toEqual([]);
});

/** 4 is the feed's image, 3 the ground's. */
const turned = [
  volts("4", 25.1),
  volts("1", 0.01),
  ohms("1", 20.3),
  ohms("3", 0.2),
  ohms("2", 8.1),
];

test("names the plug and how much agrees, and offers to turn the face over", () => {
  const [found] = findingsOf(RULE, measuredAs(turned));
  expect(found?.subjects.slice(0, 2)).toEqual(["X1", "V4"]);
  expect(found?.message).toMatch(/5 readings agree; as drawn 5 readings do not/);
  expect(found?.corrections).toEqual([{ does: "flip-face", plug: "X1" }]);
});

test("colours noted with the readings count too", () => {
  const [found] = findingsOf(RULE, measuredAs(turned, { "4": "RD", "1": "BU" }));
  expect(found?.message).toMatch(/5 readings and 2 colours agree/);
});

test("a face whose cavities have no image is never mirrored", () => {
  const circuit = fourWays();
  const [plug] = circuit.job.plugs;
  const [, second] = plug?.cavities ?? [];
  if (second) second.at = [5, 3];
  expect(findingsOf(RULE, measuredAs(turned, {}, circuit))).toEqual([]);
});

test("marks that run the other way round are none of it", () => {
  const circuit = fourWays();
  circuit.job.plugs[0]?.cavities.forEach((cavity, index) => {
    cavity.at = [15 - index * 5, 0];
  });
  const job = measuredAs([volts("1", 25.1), ohms("3", 8.1)], {}, circuit);
  expect(checkJob(job, "M1").findings.filter(({ rule }) => CERTAIN.includes(rule))).toEqual([]);
});

test("a face read from its other side on a true machine: told, or not told, but never anything else", () => {
  let found = 0;
  for (let n = 0; n < 14; n++) {
    const { job } = mislaidJob(seededRandom(SEED + n), "mirrored", 14);
    const told = checkJob(job, "M1").findings.filter(({ rule }) => CERTAIN.includes(rule));
    found += told.length;
    expect(
      told.filter(({ rule }) => rule !== RULE).map(({ message }) => message),
      `seed ${SEED + n}`,
    ).toEqual([]);
  }
  expect(found).toBeGreaterThan(0);
}, 120_000);
