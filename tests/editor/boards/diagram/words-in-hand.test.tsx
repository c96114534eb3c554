import { act, useState } from "react";
import { expect, test, vi } from "vitest";
import type { Board } from "../../../../src/editor/boards/diagram/board.ts";
import { BoardProvider } from "../../../../src/editor/boards/diagram/board-context.tsx";
import { WordInHand } from "../../../../src/editor/boards/diagram/scan/words-in-hand.tsx";
import { newJob } from "../../../../src/job/index.ts";
import { createSession, type WordDesk, type WordItem } from "../../../../src/session/index.ts";
import { key, send, show, type } from "../../support/screen.tsx";

Element.prototype.scrollTo ??= () => {};

const itemOf = (text: string, doubts: readonly string[]): WordItem => ({
  id: text,
  words: [text],
  box: { left: 0, top: 0, right: 40, bottom: 20 },
  turn: 0,
  text,
  isCorrected: false,
  targets: [
    { key: "name P1", says: `P1 (lamp): name ${text}`, ref: "P1", writes: [], problem: null },
  ],
  state: "open",
  doubts,
  waits: false,
});

const LAID = { size: { width: 0, height: 0 } };
const board = {
  get: () => LAID,
  camera: () => ({ left: 0, top: 0, zoom: 1 }),
  subscribe: () => () => {},
} as unknown as Board;

let change: (item: WordItem) => void = () => {};

function Changing({ desk, first }: { desk: WordDesk; first: WordItem }) {
  const [item, setItem] = useState(first);
  change = setItem;
  return <WordInHand desk={desk} item={item} />;
}

/** A word in hand, with what of it was confirmed; `becomes` says what is doubtful of it once it is corrected. */
async function inHand(item: WordItem) {
  const clock = vi.spyOn(performance, "now").mockReturnValue(1000);
  const confirmed: string[] = [];
  let current = item;
  const desk = {
    confirm: (id: string) => confirmed.push(id) > 0,
    correct: (_id: string, text: string) => {
      current = { ...item, text, doubts: current.doubts };
    },
    current: () => current,
    skip: () => {},
    step: () => {},
  } as unknown as WordDesk;
  const session = createSession("job", newJob("Words", 24));
  const page = await show(
    session,
    <BoardProvider value={board}>
      <Changing desk={desk} first={item} />
    </BoardProvider>,
  );
  // Its picture is drawn, or there is none.
  await act(async () => {});
  const field = page.querySelector("input") as HTMLInputElement;
  return {
    page,
    confirmed,
    field,
    enter: () => send(field, key("Enter")),
    press: () =>
      act(async () =>
        [...page.querySelectorAll("button")].find((one) => one.textContent === "Confirm")?.click(),
      ),
    wait: (ms: number) => {
      clock.mockReturnValue(performance.now() + ms);
    },
    shows: (next: WordItem) => act(async () => change(next)),
    becomes: (doubts: readonly string[]) => {
      current = { ...current, doubts };
    },
  };
}

test("a sure word is taken at once", async () => {
  const hand = await inHand(itemOf("P1", []));
  await hand.enter();
  expect(hand.confirmed).toEqual(["P1"]);
});

test("a doubtful one is taken by no key and no click that was meant for the word before it", async () => {
  const hand = await inHand(itemOf("SP3", ["Hard to read."]));
  expect(hand.page.textContent).toContain("Doubtful. Hard to read.");
  for (const take of [hand.enter, hand.press]) {
    await take();
    hand.wait(300);
  }
  expect(hand.confirmed).toEqual([]);
  expect(hand.page.textContent).toContain("Not written yet");
  // However often and long somebody hurries.
  for (let n = 0; n < 10; n++) {
    await hand.enter();
    hand.wait(300);
  }
  expect(hand.confirmed).toEqual([]);
  hand.wait(800);
  await hand.enter();
  expect(hand.confirmed).toEqual(["SP3"]);
});

test("a doubt that comes of what was worked out meanwhile must be in sight as well", async () => {
  const item = itemOf("SP3", []);
  const hand = await inHand(item);
  hand.wait(5000);
  await hand.shows({ ...item, doubts: ["It stands at a joint."] });
  await hand.enter();
  expect(hand.confirmed).toEqual([]);
  hand.wait(800);
  await hand.enter();
  expect(hand.confirmed).toEqual(["SP3"]);
});

test("what was typed has been looked at, but for a doubt that comes of it", async () => {
  const hand = await inHand(itemOf("SP3", ["Hard to read."]));
  await type(hand.field, "P3");
  await hand.enter();
  expect(hand.confirmed).toEqual(["SP3"]);

  const other = await inHand(itemOf("P3", ["Hard to read."]));
  other.becomes(["It takes the place of “P7”."]);
  await type(other.field, "P7");
  await other.enter();
  expect(other.confirmed).toEqual([]);
});
