import type { Id, Job, When } from "../../job/index.ts";
import type { Bench } from "../solve/index.ts";
import { harmless, remark } from "./remarks.ts";

/** What the remarks at the top of a deck tell of. */
export interface Told {
  readonly job: Job;
  readonly machine: Id | null;
  readonly when: When;
  readonly bench: Bench;
  readonly nameOf: ReadonlyMap<number, string>;
  readonly places: ReadonlyMap<number, readonly string[]>;
  readonly floating: readonly (readonly string[])[];
}

/** The title line, and remarks on the machine, its state, what is pinned, left out, and each node. */
export function headOf(told: Told): readonly string[] {
  const { job, machine, when, floating } = told;
  const named = job.machines.find((one) => one.id === machine);
  return [
    `Pintruth netlist: ${harmless(job.title)}`,
    ...remark(`Machine: ${named ? `${named.id}, ${named.name}` : "as drawn"}`),
    ...remark(`State: ${stateWords(when)}`),
    ...pinnedLines(told),
    ...remark("Volts, ohms and amperes, without multiples. Voltages count from node 0."),
    ...remark("As drawn: a fault that the machine may have is not in here."),
    "*",
    ...nodeLines(told),
    ...(floating.length === 0
      ? []
      : [
          "*",
          ...remark(
            "Left out, because nothing ties it to the rest here; a meter shows a ghost voltage there:",
          ),
          ...floating.flatMap((piece) => remark(`- ${piece.join(", ")}`, 4)),
        ]),
  ];
}

/** The state in words, e.g. `S1 at "run"; A1 unplugged; engine running; all else at rest`. */
function stateWords(when: When): string {
  const said = [
    ...Object.entries(when.switches ?? {}).map(([id, position]) => `${id} at "${position}"`),
    ...(when.unplugged ?? []).map((id) => `${id} unplugged`),
    ...(when.removed ?? []).map((id) => `${id} taken out`),
    `engine ${when.engine ?? "off"}`,
  ];
  return `${said.join("; ")}; all else at rest, plugged in, fitted and good`;
}

function pinnedLines({ bench }: Told): readonly string[] {
  const { wiring, settled } = bench;
  const inState = (is: "coil" | "fed" | "level", state: boolean): string => {
    const ids = wiring.deciders.flatMap((decider) =>
      decider.is === is && (settled.states.get(decider.id) ?? false) === state
        ? [is === "level" ? decider.id : decider.part]
        : [],
    );
    return ids.length === 0 ? "none" : ids.join(", ");
  };
  const lines = [`Relays pulled in: ${inState("coil", true)}. At rest: ${inState("coil", false)}.`];
  if (wiring.deciders.some(({ is }) => is === "fed")) {
    lines.push(`Fed: ${inState("fed", true)}. Not fed: ${inState("fed", false)}.`);
  }
  if (wiring.deciders.some(({ is }) => is === "level")) {
    lines.push(`Module paths closed (part, from, to, input): ${inState("level", true)}.`);
  }
  const restless = wiring.deciders.filter(({ id }) => settled.oscillating.includes(id));
  if (restless.length > 0) {
    const ids = [...new Set(restless.map(({ part }) => part))].join(", ");
    lines.push(`Never at rest, pinned here as at one moment: ${ids}.`);
  }
  const overloaded = settled.branches.flatMap(({ element, owner }, index) => {
    const amps = Math.abs(settled.point.amps[index] as number);
    return element?.law.is === "protection" && amps > element.law.amps
      ? [`${owner} (${amps.toPrecision(3)} A of ${element.law.amps} A)`]
      : [];
  });
  if (overloaded.length > 0) {
    lines.push(
      `Carries more than its rating and is good here all the same: ${overloaded.join(", ")}.`,
    );
  }
  const unsaid = [...new Set(wiring.unknowns.map(({ what }) => what))];
  if (unsaid.length > 0)
    lines.push(`Not in here, because nobody has said it: ${unsaid.join("; ")}.`);
  return lines.flatMap((line) => remark(line));
}

function nodeLines({ nameOf, places }: Told): readonly string[] {
  const lines = [...nameOf].map(
    ([node, name]) => `${name} = ${(places.get(node) ?? ["(no pin of its own)"]).join(", ")}`,
  );
  return [
    ...remark("Nodes, and where they lie on the machine:"),
    ...lines.flatMap((line) => remark(line, 4)),
  ];
}
