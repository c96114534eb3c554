/**
 * One machine that was built as drawn, with every part's own true value within what a good part may
 * have, and at most one thing broken. The values are the published ones or common practice: windings
 * −15 % to +30 %, a cold filament a tenth of its hot ohms or less, a wire of no stated size up to
 * half an ohm (the job format), a lead-acid battery at rest between half charged and full.
 */
import type { Random } from "../../../src/base/index.ts";
import type { Id, Part, PinRef, Wire } from "../../../src/job/index.ts";
import type { PaperJob } from "./paper-job.ts";

export interface TrueMachine {
  readonly paper: PaperJob;
  /** Ω of each wire and of each part's own main resistance. */
  readonly wireOhms: ReadonlyMap<Id, number>;
  readonly partOhms: ReadonlyMap<Id, number>;
  /** Battery at rest, V, and its inner Ω. */
  readonly volts: number;
  readonly inner: number;
  /** Pins of modules that drive their loads now, as long as the module is fed. */
  readonly driving: ReadonlySet<PinRef>;
  /** Where each potentiometer's wiper stands, 0 to 1. */
  readonly wiper: number;
  readonly fault: Fault | null;
  /** Fuses that the fault has blown. */
  readonly blown: ReadonlySet<Id>;
}

/** What is broken. `at` names a wire, a part or a terminal. */
export type Fault =
  | { readonly is: "wire-ohms"; readonly at: Id; readonly ohms: number }
  | { readonly is: "terminal-ohms"; readonly at: PinRef; readonly ohms: number }
  | { readonly is: "part-ohms"; readonly at: Id; readonly ohms: number }
  | { readonly is: "stuck"; readonly at: Id; readonly closed: boolean }
  | { readonly is: "leak"; readonly at: PinRef; readonly to: PinRef; readonly ohms: number }
  | { readonly is: "battery"; readonly volts: number }
  | { readonly is: "dead-module"; readonly at: Id };

/** Ω a metre of 1 mm² at 20 °C, IEC 60228 class 5. */
const OHMS_PER_METRE = 0.0195;
/** Volts of a 12 V lead-acid battery at rest, half charged to full (published state-of-charge tables). */
const BATTERY = [12.2, 12.75] as const;

export function healthyTruth(random: Random, paper: PaperJob): TrueMachine {
  const { diagram, systemVoltage } = paper.job;
  const between = (low: number, high: number) => low + random.next() * (high - low);
  return {
    paper,
    wireOhms: new Map(diagram.wires.map((wire) => [wire.id, trueWire(wire, between)])),
    partOhms: new Map(
      diagram.parts.map((part) => [part.id, truePart(part, systemVoltage, between)]),
    ),
    volts: (systemVoltage / 12) * between(...BATTERY),
    inner: between(0.006, 0.02),
    driving: new Set(
      paper.pins
        .filter(({ inside }) => inside.startsWith("output") && random.chance(0.4))
        .map(({ pin }) => pin),
    ),
    wiper: random.next(),
    fault: null,
    blown: new Set(),
  };
}

type Between = (low: number, high: number) => number;

function trueWire({ mm2, metres }: Wire, between: Between): number {
  if (mm2 === undefined || metres === undefined) return between(0.001, 0.04);
  return ((OHMS_PER_METRE * metres) / mm2) * between(0.9, 1.25) + between(0.0005, 0.01);
}

function truePart(part: Part, systemVoltage: number, between: Between): number {
  const winding = between(0.85, 1.3);
  switch (part.kind) {
    case "relay":
      // of which nobody has said the ohms: what small relays have (common practice, no source)
      return part.coilOhms === undefined
        ? between(70, 120) * (systemVoltage / 12) ** 2
        : part.coilOhms * winding;
    case "solenoid":
    case "motor":
    case "heater":
    case "horn":
      return (part.ohms ?? 20) * winding;
    case "lamp":
      return between(0.92, 1.08);
    case "sender":
      return between(part.ohmsMin ?? 10, part.ohmsMax ?? 180);
    case "potentiometer":
      return (part.ohms ?? 5000) * between(0.97, 1.03);
    default:
      return between(0.002, 0.02);
  }
}
