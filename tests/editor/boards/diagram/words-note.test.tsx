import { act } from "react";
import { expect, test } from "vitest";
import type { Point } from "../../../../src/base/index.ts";
import { useWords } from "../../../../src/editor/boards/diagram/scan/use-words.ts";
import { WordsNote } from "../../../../src/editor/boards/diagram/scan/words-note.tsx";
import {
  createPageDesk,
  createSession,
  createStore,
  keepFollowing,
  keepWordsRead,
  type TracedSheet,
  type TracePort,
  type WordDesk,
} from "../../../../src/session/index.ts";
import { drawing } from "../../../session/diagram/drawing.ts";
import { pictured } from "../../../session/scan/fake-trace.ts";
import { show } from "../../support/screen.tsx";

const LABELS = [
  { text: "P3", left: 130, top: 90 },
  { text: "X5", left: 320, top: 90 },
  { text: "X6", left: 520, top: 290 },
];

/** A lamp, and two splices that are not drawn yet; the names of all three are read and the queue is put away. */
async function wordsRead() {
  const whole = pictured(
    drawing([
      { id: "P1", kind: "lamp", at: [100, 100] },
      { id: "X1", kind: "splice", at: [300, 100] },
      { id: "X2", kind: "splice", at: [500, 300] },
    ]),
  );
  const session = createSession("job", whole);
  const splices = whole.diagram.parts.filter(({ kind }) => kind === "splice");
  session.edit("Without splices", ({ diagram }) => {
    diagram.parts = diagram.parts.filter(({ kind }) => kind !== "splice");
  });
  const port = {
    open: async () => ({ width: 800, height: 600, lineWidth: 4 }),
    // Each crop is of one shade, which says which label it is of.
    findWords: async () =>
      LABELS.map(({ left, top }, n) => ({
        box: { left, top, right: left + 30, bottom: top + 20 },
        ...{ turn: 0, tall: 20, isCapitals: true, isCut: false, isCrowded: false },
        ...{ bridged: null, aside: 0 },
        grey: { width: 8, height: 8, data: new Uint8Array(64).fill(n) },
      })),
    callOff: () => {},
    close: () => {},
  } as Partial<TracePort> as TracePort;
  const pages = createPageDesk(
    session,
    () => port,
    async () => ({ bytes: new Uint8Array(), type: "image/jpeg" }),
  );
  const lines = keepFollowing(session, pages, { wait: async () => {}, words: createStore([]) });
  const desk = keepWordsRead(session, pages, async () => ({
    lanes: 1,
    read: async ({ picture }) => ({
      text: LABELS[picture.at(-1) as number]?.text ?? "",
      sure: 95,
      letters: [],
    }),
    close: () => {},
  }));
  await desk.open();
  desk.close();
  return { session, lines, desk, splices };
}

const pressed = (page: HTMLElement, name: string) =>
  act(async () => {
    const all = [...page.querySelectorAll("button")];
    const button = all.find((one) => [one.textContent, one.ariaLabel].includes(name));
    if (!button) throw new Error(`no button ${name}`);
    button.focus();
    button.click();
  });

test("a word that fits what was drawn since is told of, and is the one that is looked at", async () => {
  const { session, desk, splices } = await wordsRead();
  const page = await show(session, <WordsNote />);
  expect(page.textContent).toBe("");
  const [splice] = splices;
  if (!splice) throw new Error("no splice");
  await act(async () =>
    session.edit("Draw a splice", ({ diagram }) => void diagram.parts.push(splice)),
  );
  expect(page.textContent).toContain("A word that was read fits what is drawn now.");
  await pressed(page, "Look at it");
  expect(desk.get().isOpen).toBe(true);
  expect(desk.current()?.targets[0]?.ref).toBe(splice.id);
  expect(page.textContent).toBe("");
});

test("put away it gives the keys to the board", async () => {
  const { session, splices } = await wordsRead();
  const page = await show(
    session,
    <>
      <button type="button" aria-label="Diagram board" />
      <WordsNote />
    </>,
  );
  await act(async () =>
    session.edit("Draw splices", ({ diagram }) => void diagram.parts.push(...splices)),
  );
  await pressed(page, "Put away");
  expect(page.textContent).toBe("");
  expect(document.activeElement).toBe(page.firstElementChild);
});

function Waiting({ desk }: { desk: WordDesk }) {
  const { items } = useWords(desk);
  return <p>{items.flatMap(({ waits, text }) => (waits ? [text] : [])).join(" ")}</p>;
}

test("what is shown of a word follows the lines that are followed meanwhile", async () => {
  const { session, lines, desk, splices } = await wordsRead();
  const page = await show(session, <Waiting desk={desk} />);
  expect(page.textContent).toBe("");
  const nodes = splices.map(({ at }) => ({ kind: "joint", at: [...at] as unknown as Point }));
  const traced = { basis: { sheet: session.get().sheet }, nets: [{ nodes }], questions: [] };
  await act(async () =>
    lines.set((state) => ({ ...state, traced: traced as unknown as TracedSheet })),
  );
  expect(page.textContent).toBe("X5 X6");
});
