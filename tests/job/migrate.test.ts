import { expect, test } from "vitest";
import { JOB_VERSION } from "../../src/job/index.ts";
import { MIGRATIONS, type Migration, migrate } from "../../src/job/migrate.ts";

const two: Migration = { from: 1, change: ({ name, ...rest }) => ({ ...rest, title: name }) };
const three: Migration = {
  from: 2,
  change: (job) => ({ ...job, title: String(job.title).toUpperCase() }),
};

test("an older job goes up step by step, and its unknown fields go with it", () => {
  const old = { format: "pintruth-job", version: 1, name: "Lift", extra: [1] };
  const read = migrate(old, [three, two], 3);
  const title = "LIFT";
  expect(read).toEqual({
    ok: true,
    value: { format: "pintruth-job", version: 3, title, extra: [1] },
  });
  expect(old.version).toBe(1);
});

test("a job of the present version is left as it is", () => {
  const job = { version: 3, title: "x" };
  expect(migrate(job, [two, three], 3)).toEqual({ ok: true, value: job });
});

test("a step that meets what its version cannot have is an issue, not a crash", () => {
  const strict: Migration = {
    from: 1,
    change: (job) => ({ wires: (job.wires as unknown[]).map(String) }),
  };
  const read = migrate({ version: 1 }, [strict], 2);
  expect(read).toMatchObject({ ok: false, issues: [{ code: "migration-failed" }] });
});

test("a missing step is a programmer's error", () => {
  expect(() => migrate({ version: 1 }, [three], 3)).toThrow("no migration from version 1");
});

test("there is one step for every version before the present", () => {
  const steps = MIGRATIONS.map(({ from }) => from);
  expect(steps).toEqual(Array.from({ length: JOB_VERSION - 1 }, (_, n) => n + 1));
});
