import { beforeEach, expect, test, vi } from "vitest";
import { askedLines } from "../../../src/editor/workers/asked-lines.ts";
import { breathe, CalledOff } from "../../../src/editor/workers/run-sliced.ts";
import type * as Scan from "../../../src/scan/index.ts";
import { finished, type Grey, type PreparedPage, preparePage } from "../../../src/scan/index.ts";
import type { TraceAsk } from "../../../src/session/index.ts";

/** Nets that were made of followed lines, in order, and how often lines were followed. */
const made: string[] = [];
let followings = 0;
/** Lets the following of lines take longer than a worker goes without listening. */
let isSlow = false;

vi.mock("../../../src/scan/index.ts", async (load) => {
  const real = await load<typeof Scan>();
  return {
    ...real,
    *followedLines(...given: Parameters<typeof real.followedLines>) {
      followings++;
      for (const began = performance.now(); isSlow && performance.now() - began < 40; );
      yield 0;
      return yield* real.followedLines(...given);
    },
    netsOf(...given: Parameters<typeof real.netsOf>) {
      made.push(given[1]);
      return real.netsOf(...given);
    },
  };
});

beforeEach(() => {
  made.length = 0;
  followings = 0;
  isSlow = false;
});

const SIZE = { width: 400, height: 200 };

/** A page with two level lines; a pin is at the left end of the upper one. */
const page: PreparedPage = finished(preparePage(twoLines()));
const ASK: TraceAsk = {
  parts: [],
  words: [],
  answers: [],
  terminals: { pin: [40, 60] },
};
const ON_LOWER = [200, 140] as const;

function twoLines(): Grey {
  const data = new Uint8Array(SIZE.width * SIZE.height).fill(255);
  for (const y of [58, 59, 60, 61, 138, 139, 140, 141])
    data.fill(0, y * SIZE.width + 40, y * SIZE.width + 360);
  return { ...SIZE, data };
}

const never = () => false;
const quietly = () => {};

test("nets with pins are told, and a line that no pin is on is found under the pointer", async () => {
  const lines = askedLines(page, ASK, never);
  const { nets } = await lines.trace(quietly, never);
  expect(nets.map(({ terminals }) => terminals)).toEqual([["pin"]]);
  const found = await lines.netAt(ON_LOWER, 10);
  expect(found?.net.terminals).toEqual([]);
  expect(await lines.netAt([200, 100], 10)).toBeNull();
});

test("once nets with pins are told, the others are made before anybody asks", async () => {
  const lines = askedLines(page, ASK, never);
  await lines.trace(quietly, never);
  expect(made).toEqual(["with-terminals"]);
  for (let n = 0; n < 20; n++) await breathe();
  expect(made).toEqual(["with-terminals", "all"]);
  await lines.netAt(ON_LOWER, 10);
  expect([made.length, followings]).toEqual([2, 1]);
});

test("lines whose following was called off are followed for a click all the same", async () => {
  isSlow = true;
  const lines = askedLines(page, ASK, never);
  const outcome = lines.trace(quietly, () => true).catch((error: unknown) => error);
  const found = await lines.netAt(ON_LOWER, 10);
  expect(found?.net.runs).toHaveLength(1);
  expect(await outcome).toBeInstanceOf(CalledOff);
  expect(followings).toBe(2);
});
