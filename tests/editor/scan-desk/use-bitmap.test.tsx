import { act } from "react";
import { createRoot } from "react-dom/client";
import { expect, onTestFinished, test, vi } from "vitest";
import { useBitmap } from "../../../src/editor/scan-desk/square/use-bitmap.ts";

/** Looks that are answered when the test says so, and bitmaps that say when they are closed. */
function looking() {
  const asked: { ask: string; answer: (error?: Error) => Promise<void> }[] = [];
  const closed: string[] = [];
  const get = (ask: string) =>
    new Promise<ImageBitmap>((resolve, reject) => {
      const bitmap = { close: () => closed.push(ask) } as unknown as ImageBitmap;
      asked.push({
        ask,
        answer: (error) => act(async () => (error ? reject(error) : resolve(bitmap))),
      });
    });
  return { asked, closed, get };
}

function Probe({ ask, get }: { ask: string | null; get: (ask: string) => Promise<ImageBitmap> }) {
  const { seen, isLate, problem } = useBitmap(ask, get);
  return `${seen?.ask ?? "-"}${isLate ? " late" : ""}${problem ? ` ${problem}` : ""}`;
}

async function shown(get: (ask: string) => Promise<ImageBitmap>) {
  vi.stubGlobal("IS_REACT_ACT_ENVIRONMENT", true);
  const page = document.createElement("div");
  const root = createRoot(page);
  const put = async (ask: string | null) => {
    await act(async () => root.render(<Probe ask={ask} get={get} />));
    await act(async () => new Promise((resolve) => setTimeout(resolve, 5)));
  };
  onTestFinished(async () => {
    await act(async () => root.unmount());
    vi.unstubAllGlobals();
  });
  return { put, text: () => page.textContent, leave: () => act(async () => root.render(null)) };
}

test("of many asks one is worked on at a time, the newest next, and each picture is closed in turn", async () => {
  const { asked, closed, get } = looking();
  const { put, text, leave } = await shown(get);
  await put("a");
  await put("b");
  await put("c");
  expect(asked.map(({ ask }) => ask)).toEqual(["a"]);
  expect(text()).toBe("- late");
  await asked[0]?.answer();
  // What has come is older than what is asked for: shown, and told as late.
  expect(text()).toBe("a late");
  expect(asked.map(({ ask }) => ask)).toEqual(["a", "c"]);
  await asked[1]?.answer();
  expect(text()).toBe("c");
  expect(closed).toEqual(["a"]);
  await leave();
  expect(closed).toEqual(["a", "c"]);
});

test("an answer that nobody waits for any more is closed unseen", async () => {
  const { asked, closed, get } = looking();
  const { put, text } = await shown(get);
  await put("a");
  await put(null);
  await asked[0]?.answer();
  expect(text()).toBe("-");
  expect(closed).toEqual(["a"]);
});

test("what failed is told, what was called off is not, and the next ask goes on", async () => {
  const { asked, get } = looking();
  const { put, text } = await shown(get);
  await put("a");
  await asked[0]?.answer(Object.assign(new Error("off"), { name: "CalledOff" }));
  expect(text()).toBe("- late");
  await put("b");
  await put("c");
  await asked[1]?.answer(new Error("too large"));
  expect(text()).toBe("- late too large");
  await asked[2]?.answer();
  expect(text()).toBe("c");
});
