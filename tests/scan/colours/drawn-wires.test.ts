import { describe, expect, test } from "vitest";
import { seededRandom } from "../../../src/base/index.ts";
import {
  KINDS,
  LIGHTS,
  RINGS,
  scoreOf,
  type WireTrial,
  wireTrial,
} from "../../support/wire-trials.ts";

const SEED = Number(process.env.PINTRUTH_SEED ?? 1);

/** One wire of a kind under each light, and what is said of it. */
async function trials(kind: string, ring: keyof typeof RINGS): Promise<readonly WireTrial[]> {
  const drawn: WireTrial[] = [];
  for (const [n, light] of Object.values(LIGHTS).entries()) {
    drawn.push(await wireTrial(seededRandom(SEED + 10 * n), kind, light, RINGS[ring]));
  }
  return drawn;
}

/** What is first, for a message that says what went wrong. */
const told = ({ base, tracer, seen }: WireTrial) =>
  `${base}/${tracer} told as ${seen?.base.ranked[0]?.code}/${seen?.tracer?.ranked[0]?.code ?? null}`;

describe.each(Object.keys(RINGS) as (keyof typeof RINGS)[])("under a %s ring", (ring) => {
  test.each(Object.keys(KINDS))("nothing wrong stands chosen: %s", async (kind) => {
    const drawn = await trials(kind, ring);
    const score = scoreOf(drawn);
    const why = `seed ${SEED}: ${drawn.map(told).join(", ")}`;
    expect(score.count).toBe(4);
    expect(score.wrongAndSure, why).toBe(0);
    expect(score.firstThree, why).toBeGreaterThanOrEqual(2);
  });
});
