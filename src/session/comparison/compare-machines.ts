import type { Circuit } from "../../circuit/index.ts";
import {
  cavityRef,
  type Id,
  type Job,
  type Machine,
  type PinRef,
  type Plug,
  splitRef,
  type Wire,
} from "../../job/index.ts";
import { type Role, wordsForCircuit, wordsForRole } from "../../roles/index.ts";
import { type CavityFacts, cavityFacts, meterPicture, wiresByPin } from "../../sheet/index.ts";
import type { Comparison, ComparisonRow, MachineCell, WireLook } from "./comparison.ts";
import { differencesAmong, marksOf } from "./differences.ts";
import { type PlugRoles, plugRoles } from "./plug-roles.ts";

/** Looks at one plug on every machine of the job: to be asked for, not at each edit. Null: no such plug. */
export function compareMachines(job: Job, plugId: Id): Comparison | null {
  const plug = job.plugs.find(({ id }) => id === plugId);
  if (!plug) return null;
  const rolesOn = plugRoles(job, plug);
  const columns = job.machines.map((machine) => columnOf(job, machine, plug, rolesOn));
  const drawnAt = lookOnDiagram(job);
  const rows = plug.cavities.map(({ mark }, index): ComparisonRow => {
    const cavity = cavityRef(plug.id, mark);
    const pins = job.links.filter((link) => link.cavity === cavity).map(({ pin }) => pin);
    const drawn = drawnAt(pins);
    const cells = columns.map((column) => column(index, drawn));
    const printed = pins.map((pin) => printedOn(job.diagram, pin)).find((word) => word !== "");
    return {
      key: `${cavity}#${index}`,
      cavity,
      mark,
      pin: pins[0] ?? null,
      printed: printed ?? "",
      drawn,
      cells,
      among: differencesAmong(cells),
    };
  });
  return {
    plug: plug.id,
    machines: job.machines.map(({ id, name, serial }) => ({
      id,
      name,
      ...(serial ? { serial } : {}),
    })),
    rows,
  };
}

/** Fills the cells of one machine, cavity by cavity. */
function columnOf(job: Job, machine: Machine, plug: Plug, rolesOn: PlugRoles) {
  const facts = cavityFacts(job, machine, plug, { roles: rolesOn(machine.id) });
  return (index: number, drawn: WireLook): MachineCell => {
    const one = facts[index] as CavityFacts;
    const { colour, number, mm2, role } = one;
    const wire = {
      colour: colour.onMachine,
      number: number.onMachine,
      mm2: mm2.onMachine,
      awg: null,
    };
    const here = {
      colour: colour.onDiagram,
      number: number.onDiagram,
      mm2: mm2.onDiagram,
      awg: gaugeOf(one.diagramWires),
    };
    return {
      machine: machine.id,
      wire,
      drawnHere: JSON.stringify(here) === JSON.stringify(drawn) ? null : here,
      ...judgedColumns(role),
      reading: readingOf(job, machine.id, one),
      marks: marksOf(wire, here),
    };
  };
}

const judgedColumns = (role: Role | null) => ({
  verdict: role?.verdict ?? null,
  circuit: role ? wordsForCircuit(role) : "",
  meterRole: role?.meterRole ? wordsForRole(role.meterRole) : "",
  meterVerdict: role?.meterVerdict ?? null,
});

function readingOf(job: Job, machine: Id, facts: CavityFacts): MachineCell["reading"] {
  if (facts.readings.length === 0) return null;
  const { chief, chiefWords, evidence } = meterPicture(job, machine, facts);
  if (!chief) return null;
  const { value, verdict } = chief;
  return { value, verdict, words: chiefWords, others: evidence.length - 1 };
}

/** The wire drawn at the first of some pins that has one, with no machine's changes. */
function lookOnDiagram(job: Job) {
  const wiresAt = wiresByPin(job, NO_MACHINE);
  return (pins: readonly PinRef[]): WireLook => {
    const wires = pins.flatMap((pin) => wiresAt.get(pin) ?? []);
    return {
      colour: wires.find((wire) => wire.colour !== undefined)?.colour ?? null,
      number: wires.find((wire) => wire.number !== undefined)?.number ?? null,
      mm2: wires.find((wire) => wire.mm2 !== undefined)?.mm2 ?? null,
      awg: gaugeOf(wires),
    };
  };
}

const gaugeOf = (wires: readonly Wire[]): number | null =>
  wires.find((wire) => wire.awg !== undefined)?.awg ?? null;

/** Its circuit is the diagram as it is. */
const NO_MACHINE = "";

function printedOn({ parts }: Circuit, pin: PinRef): string {
  const { owner, name } = splitRef(pin);
  const part = parts.find(({ id }) => id === owner);
  if (part?.kind !== "module") return "";
  return part.pins.find(({ id }) => id === name)?.printed ?? "";
}
