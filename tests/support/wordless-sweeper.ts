import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Job, pinRef, readJobText, splitRef } from "../../src/job/index.ts";

const JOB = fileURLToPath(new URL("../../sample-data/sweeper/job.json", import.meta.url));

/** The demo with all that its scan tells in words. */
export function sweeperJob(): Job {
  const read = readJobText(readFileSync(JOB, "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
}

export interface Wordless {
  readonly job: Job;
  /** From the name that a part bears here to the one that is printed beside it. */
  readonly printed: ReadonlyMap<string, string>;
}

/**
 * The demo as somebody has it who drew every part and wire and wrote nothing: no labels, printed words,
 * numbers or colours, and names as they were given in another order than on the drawing.
 */
export function wordlessSweeper(): Wordless {
  const job = structuredClone(sweeperJob());
  const names = new Map(namesInOtherOrder(job.diagram.parts.map(({ id }) => id)));
  const renamed = (ref: string) => {
    const { owner, name } = splitRef(ref);
    return pinRef(names.get(owner) ?? owner, name);
  };
  for (const part of job.diagram.parts) {
    part.id = names.get(part.id) ?? part.id;
    delete part.label;
    if (part.kind === "fuse") part.amps = 10;
    if (part.kind === "module") for (const pin of part.pins) delete pin.printed;
  }
  for (const wire of job.diagram.wires) {
    wire.from = renamed(wire.from);
    wire.to = renamed(wire.to);
    delete wire.number;
    delete wire.colour;
    delete wire.mm2;
  }
  job.links = [];
  job.machines = job.machines.map(({ id, name }) => ({
    id,
    name,
    readings: [],
    wires: [],
    trials: [],
  }));
  delete job.standIns;
  return { job, printed: new Map([...names].map(([old, now]) => [now, old])) };
}

/** Every name that of the next part with the same letters: F1 is F2, F2 is F3, and the last is F1. */
function namesInOtherOrder(ids: readonly string[]): [string, string][] {
  const letters = (id: string) => id.replace(/\d+$/, "");
  return ids.map((id) => {
    const alike = ids.filter((other) => letters(other) === letters(id));
    return [id, alike[(alike.indexOf(id) + 1) % alike.length] as string];
  });
}
