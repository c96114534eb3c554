import { describe, expect, test } from "vitest";
import {
  closingLine,
  oneCheck,
  playwrightCounts,
  total,
  trusted,
  vitestCounts,
} from "../../scripts/support/counts.mjs";

const assertion = (status: string) => ({ status, fullName: `a ${status} test` });

describe("counting Vitest's report", () => {
  test("goes by each test", () => {
    const assertionResults = ["passed", "passed", "failed", "pending", "todo"].map(assertion);
    const counts = vitestCounts({
      testResults: [{ name: "a", status: "failed", assertionResults }],
    });
    expect(counts).toMatchObject({ passed: 2, failed: 1, skipped: 2 });
    expect(counts.failures).toEqual(["a failed test"]);
  });

  test("takes a file that never got to its tests as a failure", () => {
    const broken = { name: "broken.test.ts", status: "failed", assertionResults: [] };
    expect(vitestCounts({ testResults: [broken] })).toMatchObject({ passed: 0, failed: 1 });
  });
});

describe("counting Playwright's report", () => {
  const spec = (status: string) => ({ title: status, tests: [{ status }] });

  test("goes into nested suites, and a flaky test has failed", () => {
    const inner = { title: "inner", specs: [spec("expected"), spec("flaky"), spec("skipped")] };
    const outer = {
      title: "outer",
      specs: [spec("unexpected"), spec("expected")],
      suites: [inner],
    };
    const counts = playwrightCounts({ suites: [outer], errors: [] });
    expect(counts).toMatchObject({ passed: 2, failed: 2, skipped: 1 });
  });

  test("takes an error outside any test as a failure", () => {
    const counts = playwrightCounts({ suites: [], errors: [{ message: "no server" }] });
    expect(counts.failures).toEqual(["no server"]);
  });
});

describe("a runner's report is trusted", () => {
  const good = oneCheck("good", true);

  test("when its exit status says the same", () => {
    expect(trusted("unit", good, 0)).toEqual(good);
  });

  test("but not when it ended badly without a failed test", () => {
    expect(trusted("unit", good, 1)).toMatchObject({ passed: 1, failed: 1 });
  });

  test("but not when it ran nothing, or only skipped", () => {
    const skipped = vitestCounts({
      testResults: [{ name: "a", status: "passed", assertionResults: [assertion("skipped")] }],
    });
    expect(trusted("unit", skipped, 0)).toMatchObject({ failed: 1, skipped: 1 });
    expect(trusted("unit", null, 0).failed).toBe(1);
  });
});

test("the closing line names skips only when there are any", () => {
  expect(closingLine(total([oneCheck("a", true), oneCheck("b", false)]))).toBe(
    "1 passed, 1 failed",
  );
  expect(closingLine({ passed: 3, failed: 0, skipped: 2, failures: [], skips: [] })).toBe(
    "3 passed, 0 failed, 2 skipped",
  );
});
