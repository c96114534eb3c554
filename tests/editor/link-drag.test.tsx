import { act } from "react";
import { expect, onTestFinished, test } from "vitest";
import { beginLinkDrag, LinkOverlay, registerLinkTarget } from "../../src/editor/link-drag.tsx";
import { createSession } from "../../src/session/index.ts";
import { smallJob } from "../session/support/small-job.ts";
import { key, send, show } from "./support/screen.tsx";

const pointer = (name: string, x: number, y: number) =>
  new MouseEvent(name, { clientX: x, clientY: y, bubbles: true });

/** A board on which the named thing lies right of x = 100. */
async function board(name: string) {
  const session = createSession("one", smallJob());
  const page = await show(session, <LinkOverlay />);
  onTestFinished(registerLinkTarget((x) => (x > 100 ? name : null)));
  const pull = async (from: string) => {
    await act(async () => beginLinkDrag(from, { clientX: 10, clientY: 10 }));
    await send(window, pointer("pointermove", 150, 40));
  };
  return { session, page, pull };
}

test("pulling a line from a pin to a cavity ties them in one edit", async () => {
  const { session, page, pull } = await board("X1:3");
  await pull("A1:3");
  const line = page.querySelector("line");
  expect([line?.getAttribute("x1"), line?.getAttribute("x2")]).toEqual(["10", "150"]);
  await send(window, pointer("pointerup", 150, 40));
  expect(session.get().job.links).toContainEqual({ pin: "A1:3", cavity: "X1:3" });
  expect(session.get().history.done.map((edit) => edit.label)).toEqual(["Tie A1:3 to X1:3"]);
  expect(page.querySelector("line")).toBeNull();
});

test("the other way round ties them too", async () => {
  const { session, pull } = await board("A1:3");
  await pull("X1:3");
  await send(window, pointer("pointerup", 150, 40));
  expect(session.get().job.links).toContainEqual({ pin: "A1:3", cavity: "X1:3" });
});

test("letting go over nothing, or over no match for it, changes nothing", async () => {
  const { session, pull } = await board("X1:3");
  await pull("A1:3");
  await send(window, pointer("pointermove", 50, 50));
  await send(window, pointer("pointerup", 50, 50));
  await pull("P1:1");
  await send(window, pointer("pointerup", 150, 40));
  expect(session.get().history.done).toEqual([]);
  expect(session.get().notice?.tone).toBe("error");
});

test("Escape lets go of the line and of nothing else", async () => {
  const { session, page, pull } = await board("X1:3");
  session.show({ selection: ["F1"] });
  await pull("A1:3");
  await send(document.body, key("Escape"));
  expect(page.querySelector("line")).toBeNull();
  await send(window, pointer("pointerup", 150, 40));
  expect(session.get().history.done).toEqual([]);
  expect(session.get().selection).toEqual(["F1"]);
});
