import { beforeEach, expect, test, vi } from "vitest";
import { keepClickFromOthers } from "../../../src/editor/boards/stray-click.ts";

const board = document.createElement("div");
const inside = document.createElement("button");
const other = document.createElement("button");
const heard: string[] = [];
board.append(inside);
inside.addEventListener("click", () => heard.push("board"));
other.addEventListener("click", () => heard.push("other"));

beforeEach(() => {
  document.body.replaceChildren(board, other);
  heard.length = 0;
  window.dispatchEvent(new Event("pointerdown"));
});

const lift = (pointerType: string) => keepClickFromOthers({ pointerType, currentTarget: board });
const clickOn = (target: HTMLElement, detail = 1) =>
  target.dispatchEvent(new MouseEvent("click", { bubbles: true, cancelable: true, detail }));

test("the click of a touch reaches the board and nothing else", () => {
  lift("touch");
  clickOn(other);
  clickOn(inside);
  expect(heard).toEqual(["board"]);
});

test("also when the board has gone from the screen by then", () => {
  lift("touch");
  board.remove();
  clickOn(other);
  expect(heard).toEqual([]);
});

test("the next touch, a key's click and a mouse's click are heard", () => {
  lift("touch");
  clickOn(other, 0);
  window.dispatchEvent(new Event("pointerdown"));
  clickOn(other);
  lift("mouse");
  clickOn(other);
  expect(heard).toEqual(["other", "other", "other"]);
});

test("a click long after is no click of that touch", () => {
  vi.useFakeTimers();
  lift("touch");
  vi.advanceTimersByTime(1500);
  vi.useRealTimers();
  clickOn(other);
  expect(heard).toEqual(["other"]);
});
