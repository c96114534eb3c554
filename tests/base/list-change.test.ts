import { expect, test } from "vitest";
import { ListChange, seededRandom } from "../../src/base/index.ts";

const SEED = Number(process.env.PINTRUTH_SEED ?? 20261126);

test("what came, went and moved is what looking for each thing finds", () => {
  const random = seededRandom(SEED);
  for (let round = 0; round < 400; round++) {
    const before = Array.from({ length: random.below(41) }, () => ({}));
    const now = before.filter(() => random.chance(0.8));
    for (let n = random.below(5); n > 0; n--) now.splice(random.below(now.length + 1), 0, {});
    if (random.chance(0.3)) now.push(...now.splice(0, random.below(now.length + 1)));
    const change = new ListChange(before, now);
    const where = `seed ${SEED}, round ${round}`;
    expect(change.added, where).toEqual(
      now.flatMap((one, place) => (before.includes(one) ? [] : [place])),
    );
    expect(
      before.map((_, place) => change.placeOf(place)),
      where,
    ).toEqual(before.map((one) => now.indexOf(one)));
  }
});
