import { describe, expect, it } from "vitest";
import { type Point, seededRandom } from "../../../src/base/index.ts";
import { type Answerable, answered } from "../../../src/scan/lines/answered.ts";

const SEED = Number(process.env.PINTRUTH_SEED ?? 1);

const place = (at: Point, reach: number, isDoubtful = true): Answerable => ({
  at,
  reach,
  isDoubtful,
});

describe("answers find the places that they are meant for", () => {
  it("takes a doubtful place before a nearer one that was sure", () => {
    const places = [place([10, 10], 30, false), place([30, 10], 30)];
    const { said } = answered([{ at: [12, 10], joined: true }], places);
    expect([...said]).toEqual([[1, true]]);
  });

  it("reaches over half a page where lines are that thick", () => {
    const { said } = answered([{ at: [900, 40], joined: false }], [place([40, 40], 900)]);
    expect([...said]).toEqual([[0, false]]);
  });

  it("counts the last of two, and leaves one that no place is near", () => {
    const places = [place([10, 10], 5)];
    const answers = [
      { at: [11, 10] as Point, joined: true },
      { at: [10, 12] as Point, joined: false },
      { at: [16, 10] as Point, joined: true },
    ];
    expect([...answered(answers, places).said]).toEqual([[0, false]]);
    expect(answered(answers, places).others).toEqual([answers[2]]);
  });

  it("finds the place that looking at every one of them finds", () => {
    const random = seededRandom(SEED);
    for (let round = 0; round < 15; round++) {
      const places = Array.from({ length: 60 }, () =>
        place(
          [random.below(1500), random.below(1500)],
          random.chance(0.1) ? 300 + random.below(600) : 5 + random.below(90),
          random.chance(0.5),
        ),
      );
      for (let asked = 0; asked < 20; asked++) {
        const answer = {
          at: [random.below(1500), random.below(1500)] as Point,
          joined: random.chance(0.5),
        };
        const { said, others } = answered([answer], places);
        const wanted = slowly(answer.at, places);
        expect([...said], `PINTRUTH_SEED=${SEED}`).toEqual(
          wanted === null ? [] : [[wanted, answer.joined]],
        );
        expect(others).toEqual(wanted === null ? [answer] : []);
      }
    }
  });
});

/** The nearest doubtful place in reach, else the nearest sure one; the first of two as near. */
function slowly(at: Point, places: readonly Answerable[]): number | null {
  const near = places
    .map((one, number) => ({
      ...one,
      number,
      far: Math.hypot(one.at[0] - at[0], one.at[1] - at[1]),
    }))
    .filter(({ far, reach }) => far <= reach)
    .sort(
      (a, b) => Number(b.isDoubtful) - Number(a.isDoubtful) || a.far - b.far || a.number - b.number,
    );
  return near[0]?.number ?? null;
}
