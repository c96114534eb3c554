import { expect, test } from "vitest";
import { cavityRef } from "../../src/job/index.ts";
import { expectedAt, expectedAtAll, judgeReading, settle } from "../../src/readings/index.ts";
import { bigJob } from "../support/big-job.ts";

test("worked out for all cavities at once or one by one, the readings are the same", () => {
  const shared = settle(bigJob(200));
  const all = expectedAtAll(shared, "machine1");
  const alone = bigJob(200);
  const cavities = alone.plugs.flatMap((plug) =>
    plug.cavities.map(({ mark }) => cavityRef(plug.id, mark)),
  );
  expect([...all.keys()]).toEqual(cavities);
  for (const cavity of cavities.slice(-16)) {
    const own = expectedAt(alone, "machine1", cavity);
    expect(
      own.map(({ setup, predicted, proves }) => ({ setup, predicted, proves })),
      cavity,
    ).toEqual(
      all.get(cavity)?.map(({ setup, predicted, proves }) => ({ setup, predicted, proves })),
    );
    own.forEach(({ low, high }, n) => {
      const same = all.get(cavity)?.[n];
      expect(low ?? 0).toBeCloseTo(same?.low ?? 0, 6);
      expect(high ?? 0).toBeCloseTo(same?.high ?? 0, 6);
    });
  }
});

test("every reading offered is one that a healthy machine reads inside its band", () => {
  const job = settle(bigJob(200));
  let offered = 0;
  for (const readings of expectedAtAll(job, "machine1").values()) {
    for (const { setup, predicted } of readings) {
      if (predicted === null) continue;
      offered++;
      const reading = { ...setup, id: "R1", value: predicted };
      expect(judgeReading(job, "machine1", reading).verdict).toBe("inside");
    }
  }
  expect(offered).toBeGreaterThan(100);
});
