import { describe, expect, test } from "vitest";
import type { Finding } from "../../src/check/index.ts";
import { checkJob, createChecker } from "../../src/check/index.ts";
import type { Job } from "../../src/job/index.ts";
import { findingsOf, lampModule, testExamplesOfPage } from "../support/check-example.ts";
import { type CircuitBuilder, withBattery } from "../support/circuit-builder.ts";

const RULE = "printed-roles-rearranged";

testExamplesOfPage(RULE);

test("gives the pin that each word of a rotation belongs to", () => {
  const [found] = findingsOf(RULE, lampModule({ "1": "OUT", "2": "PWR", "3": "GND" }).job);
  expect(found?.subjects).toEqual(["A1", "A1:1", "A1:2", "A1:3"]);
  expect(found?.message).toContain("PWR belongs to A1:1 (stands at A1:2)");
  expect(found?.message).toContain("GND belongs to A1:2 (stands at A1:3)");
  expect(found?.message).toContain("OUT belongs to A1:3 (stands at A1:1)");
});

test("moves only the two words of an exchange", () => {
  const [found] = findingsOf(RULE, lampModule({ "1": "PWR", "2": "OUT", "3": "GND" }).job);
  expect(found?.subjects).toEqual(["A1", "A1:2", "A1:3"]);
});

test("is silent where no arrangement of the words fits", () => {
  expect(findingsOf(RULE, lampModule({ "1": "GND", "2": "GND", "3": "OUT" }).job)).toEqual([]);
});

/** What belongs to the pins of a module that has one of each, in their order. */
const RIGHT = ["PWR", "GND", "IGN", "IN", "OUT", "CAN H", "NC"];

/** A module with one pin of each kind; where two are asked for, all data lines go to A9. */
function oneOfEach(words: Readonly<Record<string, readonly (string | null)[]>>): CircuitBuilder {
  const circuit = withBattery()
    .part("fuse", "F1", { amps: 10 })
    .part("fuse", "F2", { amps: 10 })
    .key("S1")
    .wire("G1:+ F1:1", "F1:2 S1:30", "S1:15 F2:1")
    .part("module", "A9", { pins: Object.keys(words).map((id) => ({ id })) });
  for (const [id, printed] of Object.entries(words)) {
    circuit
      .module(id, Object.fromEntries(printed.map((word, index) => [String(index + 1), word])))
      .contact(`S_${id}`, "operator")
      .part("lamp", `P_${id}`, { watts: 5 })
      .wire(`F1:2 ${id}:1`, `${id}:2 GND1:1`, `F2:2 ${id}:3`)
      .wire(`F1:2 S_${id}:1`, `S_${id}:2 ${id}:4`)
      .wire(`${id}:5 P_${id}:1`, `P_${id}:2 GND1:1`, `${id}:6 A9:${id}`);
  }
  return circuit;
}

const found = (words: readonly (string | null)[]): readonly Finding[] =>
  findingsOf(RULE, oneOfEach({ A1: words }).job);

const moves = (one: Finding | undefined) =>
  (one?.corrections ?? []).flatMap((correction) =>
    correction.does === "move-words"
      ? correction.moves.map(({ from, to, word }) => `${word} ${from}>${to}`)
      : [],
  );

describe("names the slip", () => {
  test("nothing to tell where every word is right", () => {
    expect(found(RIGHT)).toEqual([]);
  });

  test("two words exchanged", () => {
    const [one] = found(["PWR", "GND", "IGN", "OUT", "IN", "CAN H", "NC"]);
    expect(one?.message).toContain("the words of pins 4 and 5 are exchanged");
    expect(moves(one).sort()).toEqual(["IN 5>4", "OUT 4>5"]);
  });

  test("two exchanges at once", () => {
    const [one] = found(["GND", "PWR", "IGN", "IN", "OUT", "NC", "CAN H"]);
    expect(one?.message).toContain(
      "the words of pins 1 and 2 are exchanged and the words of pins 6 and 7 are exchanged",
    );
  });

  test("all words shifted by one pin, the last at the first", () => {
    const [one] = found(["NC", ...RIGHT.slice(0, -1)]);
    expect(one?.message).toContain(
      "all words from pin 1 to pin 7 are shifted by one pin, and the last pin's word stands at the first pin",
    );
    expect(moves(one)).toHaveLength(7);
  });

  test("some words shifted by one pin the other way", () => {
    const [one] = found(["PWR", "GND", "IGN", "OUT", "CAN H", "NC", "IN"]);
    expect(one?.message).toContain(
      "all words from pin 4 to pin 7 are shifted by one pin, and the first pin's word stands at the last pin",
    );
  });

  test("the column upside down", () => {
    const [one] = found([...RIGHT].reverse());
    expect(one?.message).toContain("the column from pin 1 to pin 7 is printed upside down");
    expect(one?.subjects).not.toContain("A1:4");
  });

  test("all words one pin too low, the last of them pushed off", () => {
    const [one] = found([null, ...RIGHT.slice(0, -1)]);
    expect(one?.message).toContain("all words are shifted by one pin");
    expect(one?.message).toContain("CAN H belongs to A1:6 (stands at A1:7)");
    expect(moves(one)).toEqual(["PWR 2>1", "GND 3>2", "IGN 4>3", "IN 5>4", "OUT 6>5", "CAN H 7>6"]);
  });

  test("all words one pin too high, two alike among them", () => {
    const circuit = lampModule().module("A2", { "1": "GND", "2": "GND", "3": "PWR", "4": null });
    circuit.wire("A2:2 GND1:1", "A2:3 GND1:1", "F1:2 A2:4");
    const [one] = findingsOf(RULE, circuit.job);
    expect(moves(one)).toEqual(["GND 1>2", "GND 2>3", "PWR 3>4"]);
  });

  test("one wrong word beside a blank pin is no shift", () => {
    expect(found(["PWR", "GND", "IGN", "IN", "CAN H", null, "NC"])).toEqual([]);
  });
});

describe("where the circuit can't tell which way", () => {
  /** The feed by the key and two lamps, so that either of two words may go to either of two pins. */
  const twoLamps = (words: Readonly<Record<string, string>>) =>
    withBattery()
      .module("A1", words)
      .part("fuse", "F1", { amps: 10 })
      .key("S1")
      .part("lamp", "P1", { watts: 5 })
      .part("lamp", "P2", { watts: 5 })
      .wire("G1:+ F1:1", "F1:2 S1:30", "S1:15 A1:1", "A1:2 GND1:1")
      .wire("A1:3 P1:1", "P1:2 GND1:1", "A1:4 P2:1", "P2:2 GND1:1").job;

  test("says what is sure and what is not, and offers no correction", () => {
    // START and RUN are said of key feeds and of outputs alike (common practice, no source)
    const [one] = findingsOf(RULE, twoLamps({ "1": "LAMP", "2": "GND", "3": "START", "4": "RUN" }));
    expect(one?.message).toContain("may be the right ones on the wrong pins");
    expect(one?.message).toContain(
      "LAMP at A1:1 and the word of another pin may be exchanged, and the circuit can't tell which of them: A1:3 and A1:4. Or else LAMP at A1:1 is just wrong.",
    );
    expect(one?.corrections).toBeUndefined();
    expect(one?.subjects).toEqual(["A1", "A1:1", "A1:3", "A1:4"]);
  });

  test("of several wrong words says which are sure", () => {
    const [one] = findingsOf(RULE, twoLamps({ "1": "GND", "2": "LAMP", "3": "START", "4": "RUN" }));
    expect(one?.message).toContain("moving 3 of them leaves none contradicted");
    expect(one?.message).toContain("Sure: GND belongs to A1:2.");
    expect(one?.message).toContain(
      "Not sure: A1:1 takes START or RUN, A1:3 takes LAMP or START and A1:4 takes LAMP or RUN.",
    );
    expect(one?.message).toContain(
      "The only single slip among them: all words from pin 1 to pin 3 are shifted by one pin",
    );
    expect(one?.message).not.toContain("just wrong");
    expect(one?.corrections).toBeUndefined();
  });

  test("a lone wrong word that one other could have been exchanged with may be just wrong", () => {
    const [one] = findingsOf(RULE, twoLamps({ "1": "LAMP", "2": "GND", "3": "OUT", "4": "RUN" }));
    expect(one?.message).toContain("may be the right ones on the wrong pins: the words of pins 1");
    expect(one?.message).toContain("Or else LAMP at A1:1 is just wrong.");
    expect(one?.corrections).toBeUndefined();
  });

  test("words that read alike are no tie", () => {
    const [one] = findingsOf(RULE, twoLamps({ "1": "GND", "2": "OUT", "3": "OUT", "4": "RUN" }));
    expect(one?.message).toContain("They fit so: RUN belongs to A1:1");
    expect(moves(one).sort()).toEqual(["GND 1>2", "OUT 2>4", "RUN 4>1"]);
    // which of two pins the lamp comes to is open, though the words of both read alike
    const [two] = findingsOf(RULE, twoLamps({ "1": "LAMP", "2": "GND", "3": "RUN", "4": "RUN" }));
    expect(two?.message).toContain("A1:3 and A1:4");
  });
});

describe("across modules", () => {
  const both = (one: readonly (string | null)[], other: readonly (string | null)[]): Job =>
    oneOfEach({ A1: one, A2: other }).job;

  test("a word of the one and a word of the other are exchanged", () => {
    const [one, ...more] = findingsOf(RULE, both(RIGHT.with(1, "OUT"), RIGHT.with(4, "GND")));
    expect(more).toEqual([]);
    expect(one?.subjects).toEqual(["A1", "A2", "A1:2", "A2:5"]);
    expect(one?.message).toContain("A word of module A1 and one of module A2 are exchanged");
    expect(one?.message).toContain(
      "GND belongs to A1:2 (stands at A2:5) and OUT belongs to A2:5 (stands at A1:2)",
    );
    expect(one?.corrections).toEqual([
      {
        does: "move-words-across",
        moves: [
          { from: "A1:2", to: "A2:5", word: "OUT" },
          { from: "A2:5", to: "A1:2", word: "GND" },
        ],
      },
    ]);
  });

  test("two wrong words of each, each of which fits at one pin of the other alone", () => {
    const [one, ...more] = findingsOf(
      RULE,
      both(RIGHT.with(1, "OUT").with(3, "PWR"), RIGHT.with(0, "IN").with(4, "GND")),
    );
    expect(more).toEqual([]);
    expect(one?.message).toContain("Words of modules A1 and A2 are exchanged: each fits where");
    expect(one?.message).toContain("GND belongs to A1:2 (stands at A2:5)");
    expect(one?.message).toContain("IN belongs to A1:4 (stands at A2:1)");
    expect(one?.corrections).toHaveLength(1);
  });

  test("where the wrong words fit in more than one way, says which are sure and offers no correction", () => {
    // RUN is said of key feeds, inputs and outputs (common practice, no source), STOP of the last two
    const [one] = findingsOf(
      RULE,
      both(RIGHT.with(1, "RUN").with(0, "STOP"), RIGHT.with(3, "GND").with(4, "PWR")),
    );
    expect(one?.message).toContain("The wrong words of modules A1 and A2 may be one another's");
    expect(one?.message).toContain("Sure: PWR belongs to A1:1 and GND belongs to A1:2.");
    expect(one?.message).toContain("Not sure: A2:4 takes STOP or RUN and A2:5 takes STOP or RUN.");
    expect(one?.corrections).toBeUndefined();
  });

  test("all words of the one stand at the other", () => {
    const circuit = withBattery()
      .module("A1", { "1": "GND", "2": "PWR", "3": "VALVE" })
      .module("A2", { "1": "B+", "2": "GROUND", "3": "LAMP SW" })
      .part("fuse", "F1", { amps: 10 })
      .contact("S1", "operator")
      .part("lamp", "P1", { watts: 5 })
      .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND1:1", "F1:2 S1:1", "S1:2 A1:3")
      .wire("A2:1 GND1:1", "F1:2 A2:2", "A2:3 P1:1", "P1:2 GND1:1");
    const [one, ...more] = findingsOf(RULE, circuit.job);
    expect(more).toEqual([]);
    expect(one?.message).toContain("The words of modules A1 and A2 are exchanged");
    expect(one?.message).toContain("LAMP SW belongs to A1:3 (stands at A2:3)");
    // PWR and B+ mean the same, and so do GND and GROUND: whichever stands where, no pin means another
    expect(one?.corrections).toHaveLength(1);
  });

  test("silent where the one module has nothing wrong, or the exchange leaves a wrong word", () => {
    expect(findingsOf(RULE, both(RIGHT.with(1, "OUT"), RIGHT))).toEqual([]);
    expect(findingsOf(RULE, both(RIGHT.with(1, "OUT"), RIGHT.with(4, "PWR")))).toEqual([]);
  });

  test("silent where two other modules would do as well", () => {
    const [out, gnd] = [RIGHT.with(1, "OUT"), RIGHT.with(4, "GND")];
    expect(findingsOf(RULE, oneOfEach({ A1: out, A2: gnd, A3: gnd }).job)).toEqual([]);
    expect(findingsOf(RULE, oneOfEach({ A1: gnd, A2: out, A3: out }).job)).toEqual([]);
  });

  test("an edit of the other module is noticed", () => {
    const checker = createChecker("machine1");
    const before = both(RIGHT.with(1, "OUT"), RIGHT);
    checker.check(before);
    const after: Job = {
      ...before,
      diagram: {
        ...before.diagram,
        parts: before.diagram.parts.map((part) =>
          part.kind === "module" && part.id === "A2"
            ? { ...part, pins: part.pins.with(4, { id: "5", printed: "GND" }) }
            : part,
        ),
      },
    };
    const told = checker.check(after).findings.filter(({ rule }) => rule === RULE);
    expect(told).toHaveLength(1);
    expect(told).toEqual(checkJob(after, "machine1").findings.filter(({ rule }) => rule === RULE));
  });
});

test("is silent while lines are still being traced and a word would go where most things fit", () => {
  const lampBeside = (untraced: boolean) =>
    withBattery()
      .part("offpage", "X9")
      .contact("S1", "operator")
      .part("lamp", "P1", { watts: 5 })
      .part("module", "A1", {
        pins: ["GND", "TRIG", "OUT"].map((printed, n) => ({ id: String(n + 1), printed })),
        ...(untraced ? { untraced } : {}),
      })
      .wire("X9:1 S1:1", "S1:2 A1:1", "A1:2 P1:1", "P1:2 GND1:1", "A1:3 GND1:1");
  expect(findingsOf(RULE, lampBeside(false).job)).toHaveLength(1);
  expect(findingsOf(RULE, lampBeside(true).job)).toEqual([]);
});
