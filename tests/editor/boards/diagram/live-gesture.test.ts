import { expect, onTestFinished, test } from "vitest";
import { createPlay } from "../../../../src/circuit/index.ts";
import { createBoard } from "../../../../src/editor/boards/diagram/board.ts";
import type { Press } from "../../../../src/editor/boards/diagram/gestures/gesture.ts";
import { operateGesture } from "../../../../src/editor/boards/diagram/live/live-gesture.ts";
import {
  createSession,
  keepOperating,
  portOf,
  startOperating,
  stepWords,
} from "../../../../src/session/index.ts";
import { sweeper } from "../../support/sweeper.ts";

const settled = () => new Promise<void>((done) => setTimeout(done, 0));

async function desk() {
  const session = createSession("operate", sweeper());
  onTestFinished(
    keepOperating(session, (job, machine) => portOf(() => createPlay(job, machine)), {
      now: () => 0,
      wait: () => new Promise(() => {}),
    }),
  );
  startOperating(session);
  await settled();
  const board = createBoard(session);
  board.show({ size: { width: 800, height: 500 } });
  board.fit();
  /** A press on a part, so many pixels of the view to the right of its middle. */
  const on = (id: string, by = 0, touch = false): Press => {
    const shape = board.scene()?.partById.get(id);
    if (!shape) throw new Error(`no ${id}`);
    const [x, y] = board.toView(shape.part.at);
    const view: [number, number] = [x + by, y];
    const [clientX, clientY] = view;
    return { view, sheet: board.toSheet(view), touch, shift: false, clientX, clientY };
  };
  const done = () => session.get().operate.played.map(({ step }) => stepWords(step));
  return { session, board, on, done };
}

/** Longer than a drag takes to show itself as one. */
const aWhile = () => new Promise<void>((done) => setTimeout(done, 260));

test("a button is down as long as it is pressed", async () => {
  const { board, on, done } = await desk();
  const gesture = operateGesture(board, on("S2"));
  await aWhile();
  expect(done()).toEqual(["S2 to pressed"]);
  gesture.up?.(on("S2"), false);
  await settled();
  expect(done()).toEqual(["S2 to pressed", "Let go of S2"]);
});

test("a button that is only tapped is pressed and let go", async () => {
  const { board, on, done } = await desk();
  operateGesture(board, on("S2")).up?.(on("S2"), false);
  await aWhile();
  expect(done()).toEqual(["S2 to pressed", "Let go of S2"]);
});

test("a drag that sets out on a button presses nothing, and moves the sheet", async () => {
  const { session, board, on, done } = await desk();
  const camera = board.camera();
  const drag = operateGesture(board, on("S2", 0, true));
  drag.move?.(on("S2", 16, true));
  drag.move?.(on("S2", 60, true));
  await aWhile();
  drag.up?.(on("S2", 60, true), true);
  expect(done()).toEqual([]);
  expect(session.get().selection).toEqual([]);
  expect(board.camera()).not.toEqual(camera);
});

test("a finger that slips a little, or that holds already, presses on", async () => {
  const { board, on, done } = await desk();
  const camera = board.camera();
  const hold = operateGesture(board, on("S2", 0, true));
  hold.move?.(on("S2", 12, true));
  await aWhile();
  hold.move?.(on("S2", 80, true));
  expect(done()).toEqual(["S2 to pressed"]);
  expect(board.camera()).toEqual(camera);
  hold.up?.(on("S2", 80, true), true);
  expect(done()).toEqual(["S2 to pressed", "Let go of S2"]);
});

test("a button that the system takes the hand off is let go, or never pressed", async () => {
  const { board, on, done } = await desk();
  const taken = operateGesture(board, on("S2"));
  await aWhile();
  taken.cancel?.();
  operateGesture(board, on("S2")).cancel?.();
  await aWhile();
  expect(done()).toEqual(["S2 to pressed", "Let go of S2"]);
});

test("a switch that stays is turned by a touch, and not by a drag that begins on it", async () => {
  const { board, on, done } = await desk();
  const drag = operateGesture(board, on("Q1"));
  drag.move?.(on("Q1", 60));
  drag.up?.(on("Q1", 60), true);
  expect(done()).toEqual([]);
  operateGesture(board, on("Q1")).up?.(on("Q1"), false);
  await settled();
  operateGesture(board, on("Q1")).up?.(on("Q1"), false);
  expect(done()).toEqual(["Q1 to off", "Q1 to on"]);
});

test("a key with three positions is chosen, so that its positions can be told apart", async () => {
  const { session, board, on, done } = await desk();
  operateGesture(board, on("S1")).up?.(on("S1"), false);
  expect(done()).toEqual([]);
  expect(session.get().selection).toEqual(["S1"]);
});

test("a fingertip near a switch is enough", async () => {
  const { board, on, done } = await desk();
  operateGesture(board, on("Q1", 18, true)).up?.(on("Q1", 18, true), false);
  expect(done()).toEqual(["Q1 to off"]);
});

test("nothing of the drawing is moved by a drag", async () => {
  const { session, board, on } = await desk();
  const before = session.get().job;
  const camera = board.camera();
  const drag = operateGesture(board, on("A1"));
  drag.move?.(on("A1", 50));
  drag.up?.(on("A1", 50), true);
  expect(session.get().job).toBe(before);
  expect(board.camera()).not.toEqual(camera);
});

test("a lead that is asked for goes where the tap is, and works no switch", async () => {
  const { session, board, on, done } = await desk();
  session.show({
    operate: { ...session.get().operate, leads: { red: null, black: "chassis", asks: "red" } },
  });
  operateGesture(board, on("S2")).up?.(on("S2"), false);
  expect(done()).toEqual([]);
  expect(session.get().operate.leads.red).toMatch(/^S2:/);
});
