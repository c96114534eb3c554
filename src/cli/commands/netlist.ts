import { fail, ok, type Result } from "../../base/index.ts";
import { type Netlist, netlistOf } from "../../circuit/index.ts";
import type { Id, Job, When } from "../../job/index.ts";
import { EXIT } from "../io.ts";
import { complaint, readWithMachines } from "../job-input.ts";
import { readWhen } from "../when-input.ts";
import type { Command } from "./command.ts";

/** A deck for each machine, or for the circuit as drawn where the job has none. */
function decksOf(
  job: Job,
  machines: readonly (Id | null)[],
  when: When,
): Result<readonly { readonly machine: Id | null; readonly netlist: Netlist }[]> {
  if (when.standIn !== undefined) {
    const message = "what a stand-in does is not worked out here: leave it out of the state";
    return fail({ code: "when", path: "standIn", message });
  }
  const decks = machines.map((machine) => ({ machine, netlist: netlistOf(job, machine, when) }));
  const [problem] = decks.flatMap(({ netlist }) => netlist.bench.wiring.problems);
  return problem === undefined
    ? ok(decks)
    : fail({ code: "when", path: "", message: `no machine can be in that state: ${problem}` });
}

/** What a deck says, as data; volts are of the solver, for each node of the deck. */
function asData(
  machine: Id | null,
  when: When,
  { text, nameOf, places, floating, bench }: Netlist,
) {
  const { point, states, oscillating } = bench.settled;
  const { deciders } = bench.wiring;
  const coils = deciders.filter(({ is }) => is === "coil");
  const restless = deciders.filter(({ id }) => oscillating.includes(id));
  return {
    machine,
    when,
    deck: text,
    nodes: [...nameOf].map(([node, name]) => ({
      name,
      places: places.get(node) ?? [],
      volts: point.volts[node],
    })),
    floating,
    relays: Object.fromEntries(coils.map(({ id, part }) => [part, states.get(id) ?? false])),
    oscillating: [...new Set(restless.map(({ part }) => part))],
  };
}

export const netlist: Command = {
  name: "netlist",
  takes: "JOB [--when FILE]",
  does: "a SPICE netlist of a machine in the state asked for",
  input: "job file",
  files: "one",
  options: ["json", "machine", "when"],
  needs: [],
  async run(call, io) {
    const file = call.files[0] ?? "";
    const read = await readWithMachines(file, call.value("machine"));
    if (!read.ok) {
      io.err(complaint(file, read.issues));
      return EXIT.bad;
    }
    const { job, machines } = read.value;
    const whenFile = call.value("when");
    const when = whenFile === undefined ? ok<When>({}) : await readWhen(whenFile);
    const wanted = machines.length === 0 ? [null] : machines.map(({ id }) => id);
    const decks = when.ok ? decksOf(job, wanted, when.value) : when;
    if (!when.ok || !decks.ok) {
      io.err(complaint(whenFile ?? file, decks.ok ? [] : decks.issues));
      return EXIT.bad;
    }
    if (call.json) {
      const netlists = decks.value.map((one) => asData(one.machine, when.value, one.netlist));
      io.out(`${JSON.stringify({ file, netlists })}\n`);
    } else for (const one of decks.value) io.out(one.netlist.text);
    return EXIT.done;
  },
};
