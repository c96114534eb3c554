import { describe, expect, test } from "vitest";
import { scoreOf, sumOf } from "../support/drawn-pages/traced.ts";

/** `PINTRUTH_SEED` tries other pages: its number and the ones that follow. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
const PAGES = 4;

/** Small pages, a few hundred pixels wide, in every style. */
const scores = async (level: number) => {
  const all = [];
  for (let n = 0; n < PAGES; n++) all.push(await scoreOf(SEED + n, level, [150, 200], [24, 18]));
  return sumOf(all);
};

describe("tracing pages whose nets are known", () => {
  test("clean prints: every net whole, none joined to another, hardly a question", async () => {
    const { right, wrong, missed, questions, wanted } = await scores(0);
    expect(right, `PINTRUTH_SEED=${SEED}`).toBeGreaterThan(20);
    expect({ wrong, missed }, `PINTRUTH_SEED=${SEED}`).toEqual({ wrong: 0, missed: 0 });
    expect(20 * questions, `PINTRUTH_SEED=${SEED}`).toBeLessThanOrEqual(wanted);
  });

  test("copies with holes, blur, grain and shade: none joined to another, nearly all whole", async () => {
    const { right, wrong, missed, questions, wanted } = await scores(0.3);
    expect(wrong, `PINTRUTH_SEED=${SEED}`).toBe(0);
    expect(right / (right + missed), `PINTRUTH_SEED=${SEED}`).toBeGreaterThanOrEqual(0.93);
    expect(10 * questions, `PINTRUTH_SEED=${SEED}`).toBeLessThanOrEqual(wanted);
  });
});
