import { expect, test } from "vitest";
import { cavityFacts } from "../../../../src/editor/boards/plug/cavity-facts.ts";
import { plugActs } from "../../../../src/editor/boards/plug/plug-acts.ts";
import { viewFrom } from "../../../../src/plug/index.ts";
import { createSession, type ReadingDraft } from "../../../../src/session/index.ts";
import { analysisWith, fourWayJob } from "./sample.ts";

function board() {
  const session = createSession("k", fourWayJob());
  const plug = () => {
    const found = session.get().job.plugs[0];
    if (!found) throw new Error("the sample has a plug");
    return found;
  };
  const facts = (mark: string) => {
    const { job, side } = session.get();
    const found = cavityFacts(job, "m1", "X1", viewFrom(plug(), side), analysisWith(), null).find(
      (one) => one.mark === mark,
    );
    if (!found) throw new Error(`no cavity ${mark}`);
    return found;
  };
  return { session, plug, facts, acts: () => plugActs(session, plug()) };
}

const at = ({ plug }: ReturnType<typeof board>, mark: string) =>
  plug().cavities.find((cavity) => cavity.mark === mark)?.at;

test("an added cavity takes the next mark and is chosen, in one undo step", () => {
  const b = board();
  b.acts().add([1.23456, 6]);
  expect(at(b, "5")).toEqual([1.23, 6]);
  expect(b.session.get().selection).toEqual(["X1:5"]);
  expect(b.session.get().history.done).toHaveLength(1);
  b.session.undo();
  expect(b.session.get().job).toEqual(fourWayJob());
});

test("an arrow key moves a cavity the way it is seen, whichever side that is", () => {
  const b = board();
  expect(at(b, "1")).toEqual([-2, -2]);
  b.acts().nudge(b.facts("1"), "ArrowRight", false);
  expect(at(b, "1")).toEqual([-1.5, -2]);
  b.session.show({ side: "wire" });
  b.acts().nudge(b.facts("1"), "ArrowRight", true);
  expect(at(b, "1")).toEqual([-1.6, -2]);
  b.acts().nudge(b.facts("1"), "ArrowDown", true);
  expect(at(b, "1")).toEqual([-1.6, -1.9]);
  expect(b.acts().nudge(b.facts("1"), "a", false)).toBe(false);
});

test("a touch chooses, or puts the lead there that the pad asks for", () => {
  const b = board();
  b.acts().touch(b.facts("3"));
  expect(b.session.get().selection).toEqual(["X1:3"]);
  const draft: ReadingDraft = {
    quantity: "volts",
    red: null,
    black: null,
    asks: "red",
    when: {},
    with: "meter",
    value: "",
    note: "",
  };
  b.session.show({ draft });
  b.acts().touch(b.facts("1"));
  expect(b.session.get().draft).toMatchObject({ red: "X1:1", black: null, asks: "black" });
  b.acts().touch(b.facts("4"));
  expect(b.session.get().draft).toMatchObject({ red: "X1:1", black: "X1:4", asks: null });
  expect(b.session.get().selection).toEqual(["X1:3"]);
});

test("a new mark keeps the tie and the choice", () => {
  const b = board();
  b.acts().rename(b.facts("1"), "A");
  expect(b.session.get().job.links[0]).toEqual({ pin: "A1:1", cavity: "X1:A" });
  expect(b.session.get().selection).toEqual(["X1:A"]);
});
