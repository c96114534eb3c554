import { expect, test } from "vitest";
import type { LineQuestion } from "../../../src/scan/index.ts";
import type { TraceAsk, TraceDesk } from "../../../src/session/index.ts";
import { edit } from "../diagram/drawing.ts";
import { settled, threeFuses, tracing } from "./fake-trace.ts";
import { pictureNet } from "./picture-net.ts";

const QUESTION: LineQuestion = {
  kind: "dot",
  at: [160, 100],
  isLikelier: "joined",
  nets: ["A", "B"],
};

/** A line from F1 to F2, and one from F3 up to it: whether they touch is asked, until it is said. */
const doubtful = (ask: TraceAsk) => {
  const a = pictureNet(
    "A",
    [
      [[92, 100], "F1:2"],
      [[228, 100], "F2:1"],
    ],
    [[0, 1]],
  );
  const b = pictureNet("B", [[[228, 300], "F3:1"], [[160, 104]]], [[0, 1, [160, 300]]]);
  const said = ask.answers.find(({ at }) => at[0] === 160);
  if (!said) return { nets: [a, b], questions: [QUESTION] };
  if (!said.joined) return { nets: [a, b], questions: [] };
  const nodes = [
    [[92, 100], "F1:2"],
    [[228, 100], "F2:1"],
    [[228, 300], "F3:1"],
    [[160, 100]],
  ] as const;
  const whole = pictureNet("A", nodes as never, [
    [0, 3],
    [3, 1],
    [3, 2, [160, 300]],
  ]);
  return { nets: [whole], questions: [] };
};

const pinsOf = (desk: TraceDesk) => [...(desk.get().followed?.net?.terminals ?? [])].sort();

test("a pin or a line lights up its whole net, with its doubtful place; a bare line, too; nothing elsewhere", async () => {
  const bare = pictureNet("Z", [[[400, 50]], [[500, 50]]], [[0, 1]]);
  const { desk, asked } = tracing(threeFuses(), (ask) => ({ ...doubtful(ask), bare: [bare] }));
  await desk.follow([120, 101], 6);
  expect(pinsOf(desk)).toEqual(["F1:2", "F2:1"]);
  expect(desk.places()).toMatchObject([{ at: [160, 100], joined: null }]);
  await desk.follow([230, 300], 6, "F3:1");
  expect(pinsOf(desk)).toEqual(["F3:1"]);
  await desk.follow([450, 51], 6);
  expect(desk.get().followed?.net).toMatchObject({ id: "Z", of: ["Z"] });
  await desk.follow([700, 500], 6);
  expect(desk.get().followed).toMatchObject({ net: null, questions: [] });
  expect(asked).toHaveLength(1);
  expect(Object.keys(asked[0]?.terminals ?? {})).toHaveLength(6);
  expect(asked[0]?.parts).toHaveLength(3);
});

test("an answer joins the nets at once, is kept with the sheet in one edit, and can be taken back", async () => {
  const { desk, session, asked, hold, letGo } = tracing(threeFuses(), doubtful);
  session.show({ scanDesk: true, tool: { name: "follow" } });
  await settled();
  await desk.follow([120, 100], 6);
  hold();
  desk.answer([160, 100], true);
  expect(pinsOf(desk)).toEqual(["F1:2", "F2:1", "F3:1"]);
  expect(desk.places()).toMatchObject([{ at: [160, 100], joined: true }]);
  expect(session.get().job.diagram.sheets[0]?.answers).toEqual([{ at: [160, 100], joined: true }]);
  expect(session.get().history.done.map(({ label }) => label)).toEqual([
    "Say that lines are joined here",
  ]);
  // Not drawn before lines were followed with the answer: where they meet is not known yet.
  expect(desk.holds()).toBe(false);
  expect(desk.draw([desk.get().followed?.net as never], "Draw")).toBeNull();
  letGo();
  await settled();
  expect(asked.at(-1)?.answers).toEqual([{ at: [160, 100], joined: true }]);
  expect(desk.get().isOld).toBe(false);
  expect(desk.get().followed?.net?.runs).toHaveLength(3);

  desk.takeBack([160, 100]);
  await settled();
  expect(pinsOf(desk)).toEqual(["F1:2", "F2:1"]);
  expect(session.get().job.diagram.sheets[0]).not.toHaveProperty("answers");
  expect(desk.places()).toMatchObject([{ joined: null }]);

  desk.answer([160, 100], false);
  expect(pinsOf(desk)).toEqual(["F1:2", "F2:1"]);
  expect(desk.places()).toMatchObject([{ joined: false }]);
});

test("what is asked and not answered is not joined by what is drawn", async () => {
  const { desk, session } = tracing(threeFuses(), doubtful);
  await desk.traceAll();
  const nets = desk.difference()?.proposals.map(({ net }) => net) ?? [];
  expect(desk.draw(nets, "Accept all")).toEqual({ wires: 2, splices: 0, ends: 1 });
  const { wires, parts } = session.get().job.diagram;
  const end = parts.find(({ kind }) => kind === "offpage");
  expect(wires.map(({ from, to }) => [from, to])).toEqual([
    ["F1:2", "F2:1"],
    ["F3:1", `${end?.id}:1`],
  ]);
});

test("nets are sure without doubts, are drawn with one undo step, and are then as on the picture", async () => {
  const { desk, session } = tracing(threeFuses(), doubtful);
  session.show({ scanDesk: true });
  await desk.traceAll();
  expect(desk.difference()?.proposals).toMatchObject([
    { kind: "new", doubts: [{ why: "asked", questions: [QUESTION] }] },
    { kind: "new", doubts: [{ why: "asked" }, { why: "one-pin" }] },
  ]);
  desk.answer([160, 100], true);
  await settled();
  const [only, ...others] = desk.difference()?.proposals ?? [];
  expect(others).toEqual([]);
  expect(only).toMatchObject({ kind: "new", doubts: [] });
  expect(desk.draw([only?.net as never], "Accept a net")).toEqual({
    wires: 3,
    splices: 1,
    ends: 0,
  });
  const [splice] = session.get().job.diagram.parts.filter(({ kind }) => kind === "splice");
  expect(desk.get().laid).toEqual([splice?.id]);
  expect(desk.difference()).toMatchObject({ proposals: [], otherwise: [], same: 1 });
  // The splice that the edit made is no reason to distrust what was followed without it.
  expect(desk.holds()).toBe(true);
  await settled();
  expect(desk.difference()).toMatchObject({ proposals: [], otherwise: [], same: 1 });
  desk.hearLaid();
  expect(desk.get().laid).toEqual([]);
  session.undo();
  expect(session.get().job.diagram.wires).toEqual([]);
  await settled();
  expect(desk.difference()?.proposals).toHaveLength(1);
});

test("after a part was moved nothing is drawn before lines were followed anew", async () => {
  const { desk, session, hold, letGo, asked } = tracing(threeFuses(), doubtful);
  session.show({ scanDesk: true });
  await desk.traceAll();
  const [net] = desk.difference()?.proposals ?? [];
  hold();
  session.edit("Move F2", (draft) => {
    const part = draft.diagram.parts[1];
    if (part) part.at = [260, 200];
  });
  expect(desk.get().isOld).toBe(true);
  expect(desk.draw([net?.net as never], "Accept a net")).toBeNull();
  letGo();
  await settled();
  expect(desk.get().isOld).toBe(false);
  expect(asked.at(-1)?.terminals["F2:1"]).toEqual([230, 200]);
  session.edit("Name F2", (draft) => {
    const part = draft.diagram.parts[1];
    if (part) part.label = "Pump";
  });
  // A word beside a part is none of the picture's lines.
  expect(desk.get().isOld).toBe(false);
});

test("what wires join and the picture keeps apart is told, and whether that is asked", async () => {
  const wires = [
    { id: "W1", from: "F1:2", to: "F2:1" },
    { id: "W2", from: "F2:1", to: "F3:1" },
  ];
  const job = edit(threeFuses(), (draft) => {
    draft.diagram.wires.push(...wires);
  });
  const asking = tracing(job, doubtful);
  asking.session.show({ scanDesk: true });
  await asking.desk.traceAll();
  expect(asking.desk.difference()).toMatchObject({
    proposals: [],
    same: 1,
    otherwise: [{ groups: [["F1:2", "F2:1"], ["F3:1"]], isAsked: true }],
  });
  asking.desk.answer([160, 100], false);
  await settled();
  expect(asking.desk.difference()?.otherwise).toMatchObject([{ isAsked: false }]);
  asking.desk.answer([160, 100], true);
  await settled();
  expect(asking.desk.difference()?.otherwise).toEqual([]);
});

test("a net that joins both ends of a part, or several that are drawn, is not sure", async () => {
  const net = pictureNet(
    "N",
    [
      [[28, 100], "F1:1"],
      [[92, 100], "F1:2"],
      [[228, 100], "F2:1"],
    ],
    [
      [0, 1],
      [1, 2],
    ],
  );
  const short = tracing(threeFuses(), () => ({ nets: [net] }));
  await short.desk.traceAll();
  expect(short.desk.difference()?.proposals).toMatchObject([
    { doubts: [{ why: "shorted", part: "F1" }] },
  ]);
  const job = edit(threeFuses(), (draft) => {
    draft.diagram.wires.push(
      { id: "W1", from: "F1:2", to: "F3:2" },
      { id: "W2", from: "F2:1", to: "F2:2" },
    );
  });
  const both = pictureNet(
    "N",
    [
      [[92, 100], "F1:2"],
      [[292, 300], "F3:2"],
      [[228, 100], "F2:1"],
      [[292, 100], "F2:2"],
    ],
    [
      [0, 1],
      [1, 2],
      [2, 3],
    ],
  );
  const drawn = tracing(job, () => ({ nets: [both] }));
  await drawn.desk.traceAll();
  expect(drawn.desk.difference()?.proposals).toMatchObject([
    { kind: "partly", doubts: [{ why: "shorted", part: "F2" }, { why: "joins-drawn" }] },
  ]);
});

test("another sheet or another picture forgets it all; words that were found have lines followed anew", async () => {
  const { desk, session, words, asked } = tracing(threeFuses(), doubtful);
  session.show({ scanDesk: true, tool: { name: "follow" } });
  await settled();
  await desk.follow([120, 100], 6);
  words.set(() => [{ left: 0, top: 0, right: 9, bottom: 9 }]);
  await settled();
  expect(asked.at(-1)?.words).toHaveLength(1);
  expect(pinsOf(desk)).toEqual(["F1:2", "F2:1"]);
  session.edit("Square up the picture", (draft) => {
    const image = draft.diagram.sheets[0]?.image;
    if (image) image.file = "images/other.png";
  });
  expect(desk.get()).toMatchObject({ traced: null, followed: null });
  await settled();
  // The tool is still in hand: the new picture is followed, too.
  expect(desk.get().traced?.basis.file).toBe("images/other.png");
});

test("a doubtful place beyond which no pin is, is shown on the net that leads to it", async () => {
  const net = pictureNet("A", [[[92, 100], "F1:2"], [[160, 100]]], [[0, 1]]);
  const beyond: LineQuestion = {
    kind: "gap",
    at: [165, 100],
    isLikelier: "joined",
    nets: ["A", "Z"],
  };
  const picture = { nets: [net], bare: [net], bareQuestions: [beyond] };
  const { desk } = tracing(threeFuses(), () => picture);
  await desk.follow([92, 100], 6, "F1:2");
  await settled();
  expect(desk.places()).toMatchObject([{ at: [165, 100], question: beyond }]);
});

test("lines are followed once, however often that is asked for meanwhile", async () => {
  const { desk, session, asked, hold, letGo } = tracing(threeFuses(), doubtful);
  hold();
  session.show({ scanDesk: true, tool: { name: "follow" } });
  const followed = desk.follow([120, 100], 6);
  const all = desk.traceAll();
  await settled();
  letGo();
  await Promise.all([followed, all]);
  await settled();
  expect(asked).toHaveLength(1);
  expect(pinsOf(desk)).toEqual(["F1:2", "F2:1"]);
  expect(desk.get().isListOpen).toBe(true);
});
