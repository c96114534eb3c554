import { expect, test } from "vitest";
import { switchesInDoubt } from "../../src/session/index.ts";
import { findingsOf } from "../support/check-example.ts";
import { withBattery } from "../support/circuit-builder.ts";

/** A pin fed through two switches whose line goes on untraced. */
function fedThrough(control: "operator" | "key") {
  return withBattery()
    .contact("S1", control)
    .contact("S2", "limit")
    .module("A1", { "1": null, "4": null })
    .part("offpage", "X1")
    .wire("X1:1 S2:1", "S2:2 S1:1", "S1:2 A1:1", "A1:4 G1:-").job;
}

test("of a pin that can be anything the switches are named that a hand is taken to work", () => {
  const job = fedThrough("operator");
  const [open] = findingsOf("role-undecided", job);
  expect(open?.subjects).toEqual(["A1:1"]);
  expect(open && switchesInDoubt(job, open)).toEqual(["S1"]);
});

test("what is said of a switch is not asked again, and of other findings nothing is", () => {
  const keyed = fedThrough("key");
  const [open] = findingsOf("role-undecided", keyed);
  expect(open && switchesInDoubt(keyed, open)).toEqual([]);
  const job = fedThrough("operator");
  expect(switchesInDoubt(job, { rule: "dead-end", because: ["S1"] })).toEqual([]);
  expect(switchesInDoubt(job, { rule: "role-undecided" })).toEqual([]);
});
