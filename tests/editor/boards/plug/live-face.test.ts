import { expect, test } from "vitest";
import type { Point } from "../../../../src/base/index.ts";
import { createPlay } from "../../../../src/circuit/index.ts";
import { cavityFacts, describeCavity } from "../../../../src/editor/boards/plug/cavity-facts.ts";
import { layOutFace } from "../../../../src/editor/boards/plug/cavity-layout.ts";
import { spacingOf, viewFrom } from "../../../../src/plug/index.ts";
import { analysisOf } from "../../../../src/session/index.ts";
import { sweeper } from "../../support/sweeper.ts";

function demoFace() {
  const job = sweeper();
  const [plug] = job.plugs;
  if (!plug) throw new Error("no plug");
  const machine = job.machines[0]?.id ?? "";
  const live = createPlay(job, machine).step({ do: "turn", switch: "S1", position: "run" });
  const analysis = analysisOf(job, machine);
  const view = viewFrom(plug, "mating");
  return { plug, facts: cavityFacts(job, machine, plug.id, view, analysis, null, live) };
}

const byMark = (facts: ReturnType<typeof demoFace>["facts"], mark: string) => {
  const found = facts.find((one) => one.mark === mark);
  if (!found) throw new Error(`no cavity ${mark}`);
  return found;
};

test("a cavity says what it carries now in place of its verdict", () => {
  const { facts } = demoFace();
  expect(describeCavity(byMark(facts, "1"))).toMatch(
    /tied to A1:1, live, 2\d\.\d V against chassis$/,
  );
  expect(describeCavity(byMark(facts, "4"))).toMatch(/ground, 0\.\d\d V against chassis$/);
});

test("what is tied to nothing is floating and no voltage; where no wire can be there is nothing", () => {
  const { facts } = demoFace();
  expect(describeCavity(byMark(facts, "2"))).toMatch(/floating: a meter may show a ghost voltage$/);
  expect(byMark(facts, "7").live).toBeNull();
  expect(byMark(facts, "8").live).toBeNull();
});

test.each([52, 80])("every cavity in use keeps its volts, %i pixels apart", (apart) => {
  const { plug, facts } = demoFace();
  const scale = apart / spacingOf(plug.cavities);
  const placed = facts.map((one) => ({
    facts: one,
    at: [one.at[0] * scale, one.at[1] * scale] as Point,
  }));
  const words = layOutFace(placed, apart).map((layout) => layout.code?.text ?? null);
  expect(words.slice(0, 6)).toEqual([
    expect.stringMatching(/^2\d\.\d V$/),
    "floating",
    expect.stringMatching(/^0\.00 V$/),
    expect.stringMatching(/^0\.\d\d V$/),
    "floating",
    expect.stringMatching(/ V$/),
  ]);
});
