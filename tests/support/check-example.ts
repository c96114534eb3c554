import { expect, test } from "vitest";
import { checkJob, type Finding } from "../../src/check/index.ts";
import {
  type Cavity,
  type Job,
  type Machine,
  type Reading,
  readJobText,
} from "../../src/job/index.ts";
import { type CircuitBuilder, withBattery } from "./circuit-builder.ts";
import { readText } from "./source-files.ts";

/** Findings of one rule for a job's first machine. */
export function findingsOf(rule: string, job: Job): readonly Finding[] {
  return checkJob(job, job.machines[0]?.id ?? "").findings.filter((one) => one.rule === rule);
}

/** The two examples of a rule's page: where it speaks and where it is silent. */
function pageExamples(rule: string): { readonly speaks: Job; readonly silent: Job } {
  const blocks = [...readText(`docs/rules/${rule}.md`).matchAll(/```json\n([\s\S]*?)```/g)];
  const [speaks, silent] = blocks.map(([, text]) => {
    const job = readJobText(text ?? "");
    if (!job.ok) throw new Error(`docs/rules/${rule}.md: ${JSON.stringify(job.issues)}`);
    return job.value;
  });
  if (!speaks || !silent) throw new Error(`docs/rules/${rule}.md needs two examples`);
  return { speaks, silent };
}

/** That a rule speaks in the first example of its page, and is silent in the second. */
export function testExamplesOfPage(rule: string): void {
  test("the page's examples: it speaks, and it is silent", () => {
    const { speaks, silent } = pageExamples(rule);
    expect(findingsOf(rule, speaks)).not.toEqual([]);
    expect(findingsOf(rule, silent)).toEqual([]);
  });
}

/** A1 with a fused feed at 1, a ground at 2 and a lamp to ground at 3. */
export const lampModule = (printed: Readonly<Record<string, string>> = {}): CircuitBuilder =>
  withBattery()
    .module("A1", {
      "1": printed["1"] ?? null,
      "2": printed["2"] ?? null,
      "3": printed["3"] ?? null,
    })
    .part("fuse", "F1", { amps: 10 })
    .part("ground", "GND2")
    .part("lamp", "P1", { watts: 5 })
    .wire("G1:+ F1:1", "F1:2 A1:1", "A1:2 GND2:1", "A1:3 P1:1", "P1:2 GND1:1");

/** The job with a three-way plug X1 whose cavities are tied to the pins of the same mark. */
export function matched(
  circuit: CircuitBuilder,
  cavities: readonly Omit<Cavity, "at">[] = [{ mark: "1" }, { mark: "2" }, { mark: "3" }],
  links: readonly (readonly [pin: string, cavity: string])[] = [
    ["A1:1", "X1:1"],
    ["A1:2", "X1:2"],
    ["A1:3", "X1:3"],
  ],
): CircuitBuilder {
  circuit.job.plugs.push({
    id: "X1",
    side: "wire",
    cavities: cavities.map((cavity, index) => ({ ...cavity, at: [index * 5, 0] })),
  });
  for (const [pin, cavity] of links) circuit.job.links.push({ pin, cavity });
  return circuit;
}

export function onMachine(circuit: CircuitBuilder, change: Partial<Machine>): Job {
  Object.assign(circuit.job.machines[0] ?? {}, change);
  return circuit.job;
}

/** Volts at cavity 1 to chassis with the module unplugged, unless said otherwise. */
export const reading = (
  id: string,
  value: Reading["value"],
  more: Partial<Reading> = {},
): Reading => ({
  id,
  quantity: "volts",
  red: "X1:1",
  black: "chassis",
  value,
  when: { unplugged: ["A1"] },
  ...more,
});
