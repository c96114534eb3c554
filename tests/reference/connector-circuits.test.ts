/**
 * The published pin tables of trailer and brake-system connectors as printed sheets, each against
 * the circuit of either vehicle built from what the standard says: exactly what follows is found.
 */
import { describe, expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import type { Job } from "../../src/job/index.ts";
import { asPublished, connectorJob, saidAt, shortAt } from "./connector-circuits/connector-job.ts";
import type { End, PublishedPin, Standard } from "./connector-circuits/published-pin.ts";
import {
  ISO_1185,
  ISO_1724,
  ISO_3732,
  ISO_7638,
  ISO_11446,
  ISO_11446_VARIANT,
  ISO_12098,
  STANAG_4007,
} from "./connector-circuits/standards.ts";

const STANDARDS = [
  ISO_1724,
  ISO_1185,
  ISO_3732,
  ISO_11446,
  ISO_11446_VARIANT,
  ISO_12098,
  ISO_7638,
  STANAG_4007,
];
const ENDS: readonly End[] = ["trailer", "towing"];
const other = (end: End): End => (end === "trailer" ? "towing" : "trailer");

/**
 * Pins whose published words name only what they are at the one end: a feed is one for the trailer
 * and an output of the towing vehicle, and what the trailer tells is an input of the towing vehicle
 * and comes out of the trailer.
 */
const TRUE_AT_THE_OTHER_END: Readonly<Record<End, ReadonlyMap<Standard, readonly string[]>>> = {
  towing: new Map([
    [ISO_3732, ["4", "6"]],
    [ISO_11446, ["9", "10"]],
    [ISO_11446_VARIANT, ["9"]],
    [ISO_12098, ["9"]],
    [ISO_7638, ["1", "2"]],
    [STANAG_4007, ["K"]],
  ]),
  trailer: new Map([
    [ISO_11446, ["12"]],
    [ISO_11446_VARIANT, ["12"]],
    [ISO_12098, ["10", "11"]],
  ]),
};

/**
 * Where lamps' names stand beside such a word, the two could stand at one another's pins and none
 * would be contradicted: what is called by its lamp may go out as well as come in. That is told.
 */
const COULD_BE_EXCHANGED: Readonly<Record<End, readonly Standard[]>> = {
  trailer: [ISO_11446, ISO_11446_VARIANT, ISO_12098],
  // with the sensors' pins, where a feed could be a sensor's
  towing: [ISO_12098],
};

/** Rule and chief subject of everything found at the module, sorted. */
const found = (job: Job) =>
  checkJob(job, "machine1")
    .findings.map(({ rule, subjects }) => `${rule} ${subjects[0]}`)
    .sort();

const contradicted = (marks: readonly string[]) =>
  marks.map((mark) => `printed-role-contradicted A1:${mark}`);

/** Notes at the pins that by the page may be several things. */
const undecided = (end: End, { pins }: Standard) =>
  pins.filter(({ fits }) => fits[end].length > 1).map(({ mark }) => `role-undecided A1:${mark}`);

const expected = (end: End, standard: Standard, wrong: readonly string[] = []) =>
  [...undecided(end, standard), ...contradicted(wrong)].sort();

describe.each(STANDARDS)("$name", (standard) => {
  describe.each(ENDS)("with the %s end as the module", (end) => {
    test("the circuit allows each pin what the standard makes of it", () => {
      const { roles } = checkJob(connectorJob(end, standard, asPublished), "machine1");
      const inOrder = (names: readonly string[]) => [...names].sort().join(" ");
      expect(
        Object.fromEntries(
          roles
            .filter(({ pin }) => pin.startsWith("A1:"))
            .map(({ pin, fits }) => [pin, inOrder(fits)]),
        ),
      ).toEqual(
        Object.fromEntries(
          standard.pins.map(({ mark, fits }) => [`A1:${mark}`, inOrder(fits[end])]),
        ),
      );
    });

    test("the published words are right but where they name what the other end does", () => {
      const wrong = TRUE_AT_THE_OTHER_END[end].get(standard) ?? [];
      expect(found(connectorJob(end, standard, asPublished))).toEqual(
        [
          ...expected(end, standard, wrong),
          ...(COULD_BE_EXCHANGED[end].includes(standard) ? ["printed-roles-rearranged A1"] : []),
        ].sort(),
      );
    });

    test("the usual short words of this end are all right", () => {
      expect(found(connectorJob(end, standard, shortAt(end)))).toEqual(expected(end, standard));
    });

    test("those of the other end are contradicted wherever the direction counts", () => {
      const isWrong = (pin: PublishedPin) => {
        const said = saidAt(other(end), pin);
        if (said === null) return false;
        const { [end]: fits } = pin.fits;
        // a word for a feed holds for any feed
        if (said === "supply") return !fits.some((role) => role.endsWith("supply"));
        return !fits.includes(said);
      };
      const wrong = standard.pins.filter(isWrong).map(({ mark }) => mark);
      expect(wrong.length).toBeGreaterThan(0);
      expect(found(connectorJob(end, standard, shortAt(other(end))))).toEqual(
        expected(end, standard, wrong),
      );
    });
  });
});

describe.each(ENDS)("ISO 11446 and its variant disagree, with the %s end as the module", (end) => {
  /** Pins whose published colours differ between the two tables. */
  const OTHER_COLOURS = ["8", "9", "10", "11", "13"].map((mark) => `colour-differs X1:${mark}`);

  test.each([
    [ISO_11446, ISO_11446_VARIANT],
    [ISO_11446_VARIANT, ISO_11446],
  ])(
    "a machine by the one, wired as drawn by the other, differs in five colours",
    (sheet, machine) => {
      const job = connectorJob(end, sheet, shortAt(end), { machine });
      expect(found(job)).toEqual([...expected(end, sheet), ...OTHER_COLOURS].sort());
    },
  );
});

describe("ISO 11446 and its variant disagree on what pin 10 is for", () => {
  const keyed = (pin: PublishedPin) => (pin.mark === "10" ? "IGN" : shortAt("trailer")(pin));

  test("to the trailer both are feeds, and a word for any feed is right of both", () => {
    for (const [sheet, circuit] of [
      [ISO_11446, ISO_11446_VARIANT],
      [ISO_11446_VARIANT, ISO_11446],
    ] as const) {
      const job = connectorJob("trailer", circuit, shortAt("trailer"), { sheet });
      expect(found(job)).toEqual(expected("trailer", circuit));
    }
  });

  test("a word for a feed by the key is wrong of the charge line, which is live at all times", () => {
    const job = connectorJob("trailer", ISO_11446_VARIANT, keyed, { sheet: ISO_11446 });
    expect(found(job)).toEqual(expected("trailer", ISO_11446_VARIANT, ["10"]));
    const right = connectorJob("trailer", ISO_11446, keyed, { sheet: ISO_11446 });
    expect(found(right)).toEqual(expected("trailer", ISO_11446));
  });

  test("to the towing vehicle the trailer's battery is a source and any other load is none", () => {
    for (const [sheet, circuit] of [
      [ISO_11446, ISO_11446_VARIANT],
      [ISO_11446_VARIANT, ISO_11446],
    ] as const) {
      const job = connectorJob("towing", circuit, shortAt("towing"), { sheet });
      expect(found(job)).toEqual(expected("towing", circuit, ["10"]));
    }
  });
});
