import { expect, test } from "vitest";
import { findingKey, search } from "../../src/session/index.ts";
import { checked, smallJob } from "./support/small-job.ts";

const short = {
  rule: "dead-short",
  severity: "contradiction",
  subjects: ["F1"],
  message: "Supply reaches ground with no load.",
} as const;
const find = (query: string) =>
  search(smallJob(), checked([], [short]), query).map((found) => found.ref);

test("an id finds its own thing first", () => {
  expect(find("F1")[0]).toBe("F1");
  expect(find("w2")[0]).toBe("W2");
  expect(find("X1:3")[0]).toBe("X1:3");
  expect(find("a1:2")[0]).toBe("A1:2");
});

test("a printed word finds its pin, a label its part, a number its wire", () => {
  expect(find("gnd")[0]).toBe("A1:3");
  expect(find("beacon timer")[0]).toBe("A1");
  expect(find("1412")[0]).toBe("W2");
});

test("a colour is found by code, by both codes, with a slash, and by name", () => {
  for (const query of ["RDWH", "RD/WH", "red white", "white red"]) {
    expect(find(query), query).toEqual(["W2"]);
  }
  expect(find("red").sort()).toEqual(["W1", "W2"]);
});

test("this machine's own wire colour finds the cavity", () => {
  expect(find("blue")).toEqual(["X1:2"]);
});

test("a value finds its reading", () => {
  expect(find("24.6")).toEqual(["reading1"]);
});

test("words of a finding find it", () => {
  expect(find("reaches ground")).toEqual([findingKey(short)]);
});

test("every word asked for must be there", () => {
  expect(find("beacon nonsense")).toEqual([]);
  expect(find("   ")).toEqual([]);
});

test("one or two letters do not find everything that has them somewhere inside", () => {
  expect(find("ac")).toEqual([]);
});

test("a cavity or a pin is found by what it is and its mark", () => {
  expect(find("cavity 2")[0]).toBe("X1:2");
  expect(find("Cavity 3")[0]).toBe("X1:3");
  expect(find("pin 2")[0]).toBe("A1:2");
});
