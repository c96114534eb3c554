import fc from "fast-check";
import { expect, test } from "vitest";
import type { Finding, Severity } from "../../src/check/index.ts";
import { orderFindings, rememberOrder } from "../../src/session/index.ts";

const finding = (severity: Severity, subject: string): Finding => ({
  rule: `rule-${severity}`,
  severity,
  subjects: [subject],
  message: subject,
});
const names = (list: ReturnType<typeof orderFindings>) =>
  list.map((one) => one.finding.subjects[0]);

test("contradictions come first, then warnings, then notes", () => {
  const findings = [finding("note", "n"), finding("contradiction", "c"), finding("warning", "w")];
  expect(names(orderFindings(findings, []))).toEqual(["c", "w", "n"]);
});

test("a new finding goes behind the others of its severity", () => {
  const old = [finding("contradiction", "b"), finding("contradiction", "c")];
  const before = rememberOrder(orderFindings(old, []), []);
  const now = [finding("contradiction", "a"), ...old, finding("note", "n")];
  expect(names(orderFindings(now, before))).toEqual(["b", "c", "a", "n"]);
});

test("a finding that is undone and comes back finds its old place", () => {
  const [a, b, c] = ["a", "b", "c"].map((name) => finding("warning", name));
  if (!a || !b || !c) throw new Error("three findings");
  let before = rememberOrder(orderFindings([a, b, c], []), []);
  before = rememberOrder(orderFindings([a, c], before), before);
  expect(names(orderFindings([c, b, a], before))).toEqual(["a", "b", "c"]);
});

test("the memory stays the same object while the list stays the same", () => {
  const findings = [finding("note", "n"), finding("warning", "w")];
  const before = rememberOrder(orderFindings(findings, []), []);
  expect(rememberOrder(orderFindings(findings, before), before)).toBe(before);
});

test("whatever comes and goes, those that stay keep their order among themselves", () => {
  const severity = fc.constantFrom<Severity>("contradiction", "warning", "note");
  const pool = fc.uniqueArray(fc.tuple(severity, fc.string({ minLength: 1, maxLength: 3 })), {
    selector: ([, name]) => name,
    maxLength: 12,
  });
  fc.assert(
    fc.property(
      pool,
      fc.array(fc.array(fc.boolean(), { minLength: 12, maxLength: 12 })),
      (all, steps) => {
        let before: readonly string[] = [];
        let shown: readonly string[] = [];
        for (const step of steps) {
          const present = all
            .filter((_, place) => step[place])
            .map(([level, name]) => finding(level, name));
          const next = orderFindings(present, before);
          before = rememberOrder(next, before);
          const keys = next.map((one) => one.key);
          expect(keys).toHaveLength(present.length);
          const stayed = (list: readonly string[], other: readonly string[]) =>
            list.filter((key) => other.includes(key));
          expect(stayed(keys, shown)).toEqual(stayed(shown, keys));
          shown = keys;
        }
      },
    ),
  );
});
