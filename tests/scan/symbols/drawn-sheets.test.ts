import { describe, expect, test } from "vitest";
import { judgedSheet } from "../../support/drawn-symbols/found.ts";
import { SURE } from "../../support/drawn-symbols/small-page.ts";

/** `PINTRUTH_SEED` tries other pages: its number and the ones that follow. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
const PAGES = 2;
/** Milliseconds that they may take beside other work. */
const PATIENCE = 120_000;

const sheets = async (level: number) => {
  const judged = await Promise.all(
    Array.from({ length: PAGES }, (_, n) => judgedSheet(SEED + n, level)),
  );
  const proposals = judged.flatMap((one) => one.proposals);
  const sure = proposals.filter(({ proposal }) => proposal.confidence >= SURE);
  const doubtful = proposals.filter(({ proposal }) => proposal.confidence < 0.5);
  const share = (of: typeof proposals) => of.filter(({ isRight }) => isRight).length / of.length;
  return {
    parts: judged.reduce((sum, { parts }) => sum + parts, 0),
    found: judged.reduce((sum, { parts, missed }) => sum + parts - missed.length, 0),
    sure,
    doubtful,
    share,
  };
};

describe("symbols of pages whose parts are known", () => {
  test(
    "clean prints: nearly all are found, and what is sure is right",
    async () => {
      const { parts, found: right, sure, share } = await sheets(0);
      expect(right / parts, `PINTRUTH_SEED=${SEED}`).toBeGreaterThan(0.85);
      expect(sure.length, `PINTRUTH_SEED=${SEED}`).toBeGreaterThan(parts * 0.7);
      expect(share(sure), `PINTRUTH_SEED=${SEED}`).toBeGreaterThanOrEqual(0.93);
    },
    PATIENCE,
  );

  test(
    "copies with holes, blur, grain and shade: most are found, and what is sure is right",
    async () => {
      const { parts, found: right, sure, doubtful, share } = await sheets(0.4);
      expect(right / parts, `PINTRUTH_SEED=${SEED}`).toBeGreaterThan(0.75);
      expect(share(sure), `PINTRUTH_SEED=${SEED}`).toBeGreaterThanOrEqual(0.93);
      // A confidence says something: of the doubtful ones most are wrong.
      if (doubtful.length > 5) expect(share(doubtful), `PINTRUTH_SEED=${SEED}`).toBeLessThan(0.6);
    },
    PATIENCE,
  );
});
