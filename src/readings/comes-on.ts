import { type Between, circuitOf, elementsOf, solveCircuit } from "../circuit/index.ts";
import type { Id, Job, Part } from "../job/index.ts";
import { AMMETER, testLamp } from "./meter.ts";
import type { ReadingSetup } from "./prediction.ts";

/** Share of system voltage from which a coil, a valve or a motor may already act (our own, cautious). */
const MAY_ACT = 0.3;

/**
 * Parts that move or come on while a reading is taken on a machine that is as drawn: loads and
 * relays with enough voltage across them, a test lamp or an ammeter in place. A module of which
 * nothing is said drives nothing here, so where one is plugged in there may be more.
 */
export function comesOn(
  job: Job,
  machine: Id,
  setup: Pick<ReadingSetup, "quantity" | "red" | "black" | "when" | "with">,
): readonly Part[] {
  const { flows } = solveCircuit(job, machine, setup.when, instruments(job, setup));
  const parts = new Map(circuitOf(job, machine).parts.map((part) => [part.id, part]));
  const acting = new Set<Part>();
  for (const { part: id, a, b, volts } of flows) {
    const part = parts.get(id);
    // What a module draws for itself neither moves nor lights.
    if (!part || part.kind === "module" || Math.abs(volts) < MAY_ACT * job.systemVoltage) continue;
    const law = elementsOf(part, job.systemVoltage).find((one) => one.a === a && one.b === b)?.law;
    if (law?.is === "load" || law?.is === "led" || law?.is === "coil") acting.add(part);
  }
  return [...acting];
}

function instruments(
  job: Job,
  { quantity, red, black, with: instrument }: Parameters<typeof comesOn>[2],
): readonly Between[] {
  if (quantity === "amps") return [{ red, black, acts: AMMETER }];
  return instrument === "test-lamp" ? [{ red, black, acts: testLamp(job.systemVoltage) }] : [];
}
