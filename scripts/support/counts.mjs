/**
 * @typedef {object} Counts
 * @property {number} passed
 * @property {number} failed
 * @property {number} skipped
 * @property {string[]} failures what failed, one line each
 * @property {string[]} skips what was skipped, one line each
 */

/** @returns {Counts} */
export const noCounts = () => ({ passed: 0, failed: 0, skipped: 0, failures: [], skips: [] });

/**
 * One thing that either holds or does not.
 *
 * @param {string} name
 * @param {boolean} held
 * @returns {Counts}
 */
export const oneCheck = (name, held) =>
  held ? { ...noCounts(), passed: 1 } : { ...noCounts(), failed: 1, failures: [name] };

/** @param {readonly Counts[]} all @returns {Counts} */
export function total(all) {
  const sum = noCounts();
  for (const counts of all) {
    sum.passed += counts.passed;
    sum.failed += counts.failed;
    sum.skipped += counts.skipped;
    sum.failures.push(...counts.failures);
    sum.skips.push(...counts.skips);
  }
  return sum;
}

/** @typedef {{ assertionResults: { status: string, fullName: string }[], status: string, name: string }} VitestFile */

/**
 * Counts Vitest's JSON report, one by one and not by its own sums. A file that failed before any
 * of its tests ran counts as one failure.
 *
 * @param {{ testResults: VitestFile[] }} report
 * @returns {Counts}
 */
export function vitestCounts(report) {
  const counts = noCounts();
  for (const file of report.testResults) {
    let failedInside = false;
    for (const test of file.assertionResults) {
      failedInside ||= test.status === "failed";
      tally(counts, test.status, test.fullName);
    }
    if (file.status === "failed" && !failedInside) tally(counts, "failed", file.name);
  }
  return counts;
}

/**
 * @typedef {{ title: string, tests: { status: string }[] }} PlaywrightSpec
 * @typedef {{ title: string, specs?: PlaywrightSpec[], suites?: PlaywrightSuite[] }} PlaywrightSuite
 */

/** Playwright's own words for how a test ended; `flaky` failed first and passed when tried again. */
const ENDED = new Map([
  ["expected", "passed"],
  ["skipped", "skipped"],
  ["unexpected", "failed"],
  ["flaky", "failed"],
]);

/**
 * Counts Playwright's JSON report. An error outside any test counts as one failure.
 *
 * @param {{ suites: PlaywrightSuite[], errors: { message?: string }[] }} report
 * @returns {Counts}
 */
export function playwrightCounts(report) {
  const counts = noCounts();
  const visit = (/** @type {PlaywrightSuite} */ suite) => {
    for (const spec of suite.specs ?? []) {
      for (const test of spec.tests) {
        tally(counts, ENDED.get(test.status) ?? "failed", `${suite.title}: ${spec.title}`);
      }
    }
    for (const inner of suite.suites ?? []) visit(inner);
  };
  for (const suite of report.suites) visit(suite);
  for (const error of report.errors) tally(counts, "failed", error.message ?? "browser tests");
  return counts;
}

/**
 * @param {Counts} counts
 * @param {string} status `passed`, `failed`, or another word for "not run"
 * @param {string} name
 */
function tally(counts, status, name) {
  if (status === "passed") {
    counts.passed += 1;
  } else if (status === "failed") {
    counts.failed += 1;
    counts.failures.push(name);
  } else {
    counts.skipped += 1;
    counts.skips.push(name);
  }
}

/**
 * What a runner's report says, mended where its exit status says otherwise: a runner that failed
 * without a failed test, or that ran no test at all, has failed.
 *
 * @param {string} name of the stage
 * @param {Counts | null} counts null when there is no report
 * @param {number} status exit status of the runner
 * @returns {Counts}
 */
export function trusted(name, counts, status) {
  if (!counts) return oneCheck(`${name}: no report, exit status ${status}`, false);
  if (counts.passed + counts.failed === 0) {
    return total([counts, oneCheck(`${name}: not one test was run`, false)]);
  }
  if (status !== 0 && counts.failed === 0) {
    return total([counts, oneCheck(`${name}: exit status ${status} without a failed test`, false)]);
  }
  return counts;
}

/** The closing line. @param {Counts} counts */
export function closingLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`;
}
