import type { ReadingSetup } from "./prediction.ts";

/** Stands beside every proposed measurement and on every sheet. */
export const WHO_COMES_FIRST =
  "The manufacturer’s instructions, local rules and a qualified person come first.";

const SECURE =
  "Secure the machine, lower the attachments, relieve the pressure, keep people clear.";
const SHUT_DOWN =
  "Key off and wait for the module to shut down before unplugging it. An unplugged module can drop a load or release a hold.";
const ENGINE_TURNING = "Engine turning: mind belts, fan and hot exhaust.";
const NO_BYPASS = "Never bypass an interlock that protects a person.";
const NO_FORCE = "Never force a probe into a socket.";

/** The usual cautions of the trade for metering at a plug; common practice, no single source. */
export const USUAL_CAUTIONS: readonly string[] = [
  SECURE,
  SHUT_DOWN,
  "Unplug the module before metering the harness. Never measure ohms on a live circuit.",
  "A test lamp is a load: it can pull in a relay or crack a valve open and move the machine. Never on data, sensor, airbag or injector lines.",
  "Never put an ammeter across a source.",
  NO_FORCE,
  "Put the fuse at the source end of any temporary lead. Never bypass an interlock that protects a person.",
];

/** The cautions that belong to bringing a machine into a state to see what it does, the gravest first. */
export function cautionsForTrial(when: ReadingSetup["when"]): string[] {
  const { engine, unplugged, removed } = when;
  const turning = engine === "running" || engine === "cranking";
  return [
    SECURE,
    "Whatever comes on may move the machine: stand clear of it, and know how you stop it.",
    ...((unplugged?.length ?? 0) > 0 ? [SHUT_DOWN] : []),
    ...((removed?.length ?? 0) > 0
      ? ["Key off before anything is taken out or put back. What it fed can drop a load."]
      : []),
    ...(turning ? [ENGINE_TURNING] : []),
    NO_BYPASS,
  ];
}

/** The cautions that belong to one reading, the gravest first. */
export function cautionsFor(setup: Pick<ReadingSetup, "quantity" | "with" | "when">): string[] {
  const cautions: string[] = [SECURE];
  const { quantity, when } = setup;
  if ((when.unplugged?.length ?? 0) > 0) cautions.push(SHUT_DOWN);
  if (setup.with === "test-lamp") {
    cautions.push(
      "A test lamp is a load: it can pull in a relay or crack a valve open and move the machine. Never on data, sensor, airbag or injector lines.",
    );
  }
  if (quantity === "ohms") {
    cautions.push(
      "Ohms only on a dead circuit: battery isolated, the module unplugged. Zero the leads first.",
    );
  }
  if (quantity === "amps") {
    cautions.push(
      "Amps only in place of a removed part or an opened joint, through a fused lead. Across a source it is a short.",
    );
  }
  if (quantity === "drop") {
    cautions.push("A drop is measured with the current flowing: what it feeds will be running.");
  }
  if (when.engine === "running" || when.engine === "cranking") {
    cautions.push(ENGINE_TURNING);
  }
  cautions.push(NO_FORCE);
  return cautions;
}
