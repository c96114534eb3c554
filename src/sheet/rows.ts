import type { CheckResult } from "../check/index.ts";
import type { CavityRef, Id, Job, Machine, Part, Plug } from "../job/index.ts";
import {
  type ExpectedReading,
  expectedAt,
  phrasesForWhen,
  wordsForPrediction,
  wordsForProbe,
} from "../readings/index.ts";
import { wordsForCircuit } from "../roles/index.ts";
import { formatColour, sameColour } from "../standards/index.ts";
import {
  type CavityFacts,
  type CavityState,
  cavityFacts,
  cavityState,
  known,
} from "./cavity-facts.ts";
import { chiefEvidence, evidenceAt, settlingEvidence } from "./evidence.ts";
import type { SheetRow } from "./model.ts";

/** The sheet's table for one plug on one machine. */
export function sheetRows(job: Job, machine: Machine, plug: Plug, check: CheckResult): SheetRow[] {
  const parts = new Map(job.diagram.parts.map((part) => [part.id, part]));
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
  const shownColour = known(colour);
  const differs =
    colour.onMachine && colour.onDiagram && !sameColour(colour.onMachine, colour.onDiagram);
  return {
    mark: cavity.mark,
    pin: facts.pins.join(", "),
    state,
    printed: role?.printed ?? "",
    wrong: role?.verdict === "contradicted",
    is: role ? wordsForCircuit(role) : WITHOUT_ROLE[state],
    by: role ? partsAlong(role.because, parts) : "",
    verdict: role?.verdict ?? null,
    colour: shownColour,
    colourCode: shownColour ? formatColour(shownColour) : "",
    number: known(number) ?? "",
    mm2: known(mm2),
    wireFrom: wireFrom(facts),
    diagramColourCode: differs && colour.onDiagram ? formatColour(colour.onDiagram) : "",
    ...expectation(
      job,
      facts.ref,
      state === "wired" ? expectedAt(job, machine, facts.ref)[0] : undefined,
    ),
    ...evidenceWords(job, machine, facts),
  };
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

function expectation(
  job: Job,
  cavity: CavityRef,
  first: ExpectedReading | undefined,
): Pick<SheetRow, "expected" | "expectedSetup"> {
  if (!first) return { expected: "", expectedSetup: [] };
  const { setup } = first;
  const isBlack = setup.black === cavity;
  const expectedSetup = [
    setup.quantity === "drop" ? "drop under load" : "",
    isBlack ? `from ${wordsForProbe(job, setup.red)}` : `to ${wordsForProbe(job, setup.black)}`,
    setup.with === "test-lamp" ? "test lamp as load" : "",
    ...phrasesForWhen(job, setup.when),
  ].filter((phrase) => phrase !== "");
  return { expected: wordsForPrediction(first, setup.quantity), expectedSetup };
}

function evidenceWords(
  job: Job,
  machine: Id,
  facts: CavityFacts,
): Pick<SheetRow, "evidence" | "proved" | "faulty"> {
  const evidence = evidenceAt(job, machine, facts);
  const settling = settlingEvidence(job, machine, facts, evidence);
  const outside = evidence.filter((one) => one.verdict === "outside");
  const chief = chiefEvidence(settling, evidence);
  if (!chief) {
    const state = cavityState(facts);
    const isNeeded = state === "wired" || state === "untied";
    return { evidence: isNeeded ? "not measured" : "", proved: false, faulty: false };
  }
  const comparison = chief.verdict === "not-comparable" ? "" : chief.verdictWords;
  const rest = evidence.length - 1;
  const bad = outside.filter((one) => one !== chief).length;
  const more =
    bad > 0 && settling ? `but ${bad} not as expected` : rest > 0 ? `and ${rest} more` : "";
  const words = [chief.value, comparison, chief.day, more].filter((word) => word !== "");
  return {
    evidence: words.join(", "),
    proved: settling !== null,
    faulty: outside.length > 0,
  };
}
