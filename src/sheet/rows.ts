import type { CheckResult } from "../check/index.ts";
import { circuitOf } from "../circuit/index.ts";
import type { CavityRef, Id, Job, Machine, Part, Plug } from "../job/index.ts";
import {
  expectedAt,
  type Prediction,
  phrasesForWhen,
  type ReadingSetup,
  wordsForPrediction,
  wordsForProbe,
} from "../readings/index.ts";
import { type Role, standingRole, wordsForCircuit, wordsForRole } from "../roles/index.ts";
import { formatColour, sameColour } from "../standards/index.ts";
import {
  type CavityFacts,
  type CavityState,
  cavityFacts,
  cavityState,
  known,
} from "./cavity-facts.ts";
import { loadPhrases, type MeterPicture, meterPicture } from "./evidence.ts";
import { evidenceColumns } from "./evidence-columns.ts";
import type { SheetRow } from "./model.ts";

/** The sheet's table for one plug on one machine. */
export function sheetRows(job: Job, machine: Machine, plug: Plug, check: CheckResult): SheetRow[] {
  const parts = new Map(circuitOf(job, machine.id).parts.map((part) => [part.id, part]));
  return cavityFacts(job, machine, plug, check).map((facts) =>
    sheetRow(job, machine.id, facts, parts),
  );
}

function sheetRow(
  job: Job,
  machine: Id,
  facts: CavityFacts,
  parts: ReadonlyMap<Id, Part>,
): SheetRow {
  const { cavity, role, colour, number, mm2 } = facts;
  const state = cavityState(facts);
  const picture = meterPicture(job, machine, facts);
  const expected = state === "wired" ? expectedBeside(job, machine, facts.ref, picture) : null;
  const shownColour = known(colour);
  const differs =
    colour.onMachine && colour.onDiagram && !sameColour(colour.onMachine, colour.onDiagram);
  return {
    mark: cavity.mark,
    pin: facts.pins.join(", "),
    state,
    printed: role?.printed ?? "",
    wrong: role?.verdict === "contradicted",
    is: role ? wordsForFunction(role) : WITHOUT_ROLE[state],
    adopted: role !== null && standingRole(role) !== null,
    by: role ? partsAlong(role.because, parts) : "",
    verdict: role?.verdict ?? null,
    colour: shownColour,
    colourCode: shownColour ? formatColour(shownColour) : "",
    number: known(number) ?? "",
    mm2: known(mm2),
    wireFrom: wireFrom(facts),
    diagramColourCode: differs && colour.onDiagram ? formatColour(colour.onDiagram) : "",
    ...expectation(job, facts.ref, expected),
    ...evidenceColumns(state, picture, expected?.isSameWay ?? false),
  };
}

/** What was adopted where several roles fit; else all that the circuit says, with its side. */
function wordsForFunction(role: Role): string {
  const adopted = standingRole(role);
  return adopted !== null && role.circuitRole === "undecided"
    ? wordsForRole(adopted)
    : wordsForCircuit(role);
}

const WITHOUT_ROLE: Readonly<Record<CavityState, string>> = {
  wired: "not traced",
  untied: "no pin matched",
  empty: "empty cavity",
  blocked: "blocked cavity",
};

function wireFrom({ machineWire, colour, number }: CavityFacts): SheetRow["wireFrom"] {
  if (machineWire && (machineWire.colour || machineWire.number)) return "machine";
  return known(colour) !== null || known(number) !== null ? "diagram" : null;
}

/** Parts nearest to the pin are named in full, the rest by their ids. */
const NAMED_IN_FULL = 2;

/** `F3, S1 key switch, G1`: the parts worth naming on a path; wires, splices and plugs are not. */
function partsAlong(because: readonly Id[], parts: ReadonlyMap<Id, Part>): string {
  const passed = new Set<Part>();
  for (const id of because) {
    const part = parts.get(id);
    if (part && part.kind !== "splice" && part.kind !== "inline") passed.add(part);
  }
  return [...passed]
    .map(({ id, label }, place) => (label && place < NAMED_IN_FULL ? `${id} ${label}` : id))
    .join(", ");
}

interface Expected extends Prediction {
  readonly setup: ReadingSetup;
  /** The chief reading was taken in this way. */
  readonly isSameWay: boolean;
}

/**
 * What to print beside the chief reading: what a healthy machine shows measured in the same way,
 * so that like is compared with like; where the reading is of another kind, the most telling.
 */
function expectedBeside(
  job: Job,
  machine: Id,
  cavity: CavityRef,
  { chief }: MeterPicture,
): Expected | null {
  const offers = expectedAt(job, machine, cavity);
  const isComparable = chief && (chief.verdict === "inside" || chief.verdict === "outside");
  if (isComparable && chief.reach === "harness") {
    const { reading, judged } = chief;
    const alike = offers.filter((one) => isSameWay(one.setup, reading) && isSameValue(one, judged));
    const first = alike.find((one) => sameSwitches(one.setup, reading)) ?? alike[0];
    return { ...(first ?? { ...judged, setup: reading }), isSameWay: true };
  }
  const [first] = offers;
  return first ? { ...first, isSameWay: false } : null;
}

const isSameWay = (a: ReadingSetup, b: ReadingSetup): boolean =>
  a.quantity === b.quantity && a.red === b.red && a.black === b.black && a.with === b.with;

/** Between them no mechanic would tell a difference, whichever way the circuit is made dead or live. */
function isSameValue(a: Prediction, b: Prediction): boolean {
  const holds = ({ low, high }: Prediction, { predicted }: Prediction) =>
    typeof predicted === "number" && low !== null && high !== null
      ? predicted >= low && predicted <= high
      : false;
  if (a.predicted === "OL" || b.predicted === "OL") return a.predicted === b.predicted;
  return holds(a, b) && holds(b, a);
}

const sameSwitches = (a: ReadingSetup, b: ReadingSetup): boolean => {
  const listed = ({ when }: ReadingSetup) => Object.entries(when.switches ?? {}).sort();
  return JSON.stringify(listed(a)) === JSON.stringify(listed(b));
};

function expectation(
  job: Job,
  cavity: CavityRef,
  expected: Expected | null,
): Pick<SheetRow, "expected" | "expectedSetup"> {
  if (!expected) return { expected: "", expectedSetup: [] };
  const { setup } = expected;
  const isBlack = setup.black === cavity;
  const expectedSetup = [
    isBlack ? `from ${wordsForProbe(job, setup.red)}` : `to ${wordsForProbe(job, setup.black)}`,
    ...loadPhrases(setup),
    ...phrasesForWhen(job, setup.when),
  ];
  return { expected: wordsForPrediction(expected, setup.quantity), expectedSetup };
}
