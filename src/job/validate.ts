import type { Issue } from "../base/index.ts";
import { imageUsesOf, safeFile } from "./images.ts";
import { LIMITS } from "./limits.ts";
import { pinIdsOf } from "./pins.ts";
import { splitRef } from "./refs.ts";
import type { CavityRef, Id, Job, Part, PartOf, PinId, PinRef, Plug, Wire } from "./types.ts";
import { issue } from "./wording.ts";

type Report = (found: Issue) => void;

/** A list of things with ids, where it stands in the file and what one of them is called. */
interface IdList {
  readonly path: string;
  readonly noun: string;
  readonly things: readonly { readonly id: Id }[];
}

function idLists(job: Job): readonly IdList[] {
  const lists: IdList[] = [
    { path: "diagram.sheets", noun: "sheet", things: job.diagram.sheets },
    { path: "diagram.parts", noun: "part", things: job.diagram.parts },
    { path: "diagram.wires", noun: "wire", things: job.diagram.wires },
    { path: "plugs", noun: "plug", things: job.plugs },
    { path: "machines", noun: "machine", things: job.machines },
    { path: "standIns", noun: "stand-in", things: job.standIns ?? [] },
  ];
  job.machines.forEach((machine, m) => {
    const path = `machines[${m}]`;
    lists.push({ path: `${path}.readings`, noun: "reading", things: machine.readings });
    lists.push({ path: `${path}.trials`, noun: "trial", things: machine.trials });
    const { firstChecks = [], recordings = [] } = machine;
    lists.push({ path: `${path}.firstChecks`, noun: "first check", things: firstChecks });
    lists.push({ path: `${path}.recordings`, noun: "recording", things: recordings });
    machine.changes?.forEach((change, c) => {
      const inside = `${path}.changes[${c}]`;
      lists.push({ path: `${inside}.parts`, noun: "part", things: change.parts ?? [] });
      lists.push({ path: `${inside}.wires`, noun: "wire", things: change.wires ?? [] });
    });
  });
  return lists;
}

function checkIds(job: Job, report: Report) {
  const first = new Map<Id, string>();
  for (const { path, noun, things } of idLists(job)) {
    for (const [n, { id }] of things.entries()) {
      const at = `${path}[${n}]`;
      const other = first.get(id);
      if (other === undefined) first.set(id, `${noun} ${at}`);
      else report(issue("duplicate-id", `${at}.id`, id, other, `${noun} ${at}`));
    }
  }
}

/** What a reference may name: parts and plugs with their pins and marks, each set built once. */
class Known {
  private readonly parts = new Map<Id, Part>();
  private readonly pins = new Map<Id, ReadonlySet<PinId>>();
  private readonly marks = new Map<Id, ReadonlySet<string>>();

  constructor(parts: readonly Part[], plugs: readonly Plug[]) {
    for (const part of parts) this.parts.set(part.id, part);
    for (const plug of plugs) {
      this.marks.set(plug.id, new Set(plug.cavities.map((cavity) => cavity.mark)));
    }
  }

  hasPart(id: Id): boolean {
    return this.parts.has(id);
  }

  /** Null when the pin exists. */
  pinFault(ref: PinRef, path: string, owner: string, field: string): Issue | null {
    const { owner: id, name } = splitRef(ref);
    const part = this.parts.get(id);
    if (!part) return issue("unknown-part", path, owner, field, id);
    let pins = this.pins.get(id);
    if (!pins) {
      pins = new Set(pinIdsOf(part));
      this.pins.set(id, pins);
    }
    return pins.has(name) ? null : issue("unknown-pin", path, owner, field, id, name, pins);
  }

  /** Null when the cavity exists. */
  cavityFault(ref: CavityRef, path: string, owner: string): Issue | null {
    const { owner: id, name } = splitRef(ref);
    const marks = this.marks.get(id);
    if (!marks) return issue("unknown-plug", path, owner, id);
    return marks.has(name) ? null : issue("unknown-cavity", path, owner, id, name);
  }
}

function checkSwitch(part: PartOf<"switch">, path: string, report: Report) {
  const owner = `part ${part.id}`;
  const positions = new Set(part.positions);
  const check = (position: string, at: string, field: string) => {
    if (positions.has(position)) return;
    report(issue("unknown-position", `${path}.${at}`, owner, field, position, positions));
  };
  if (part.rest !== undefined) check(part.rest, "rest", "rest");
  if (Array.isArray(part.springReturn)) {
    part.springReturn.forEach((position, n) => {
      check(position, `springReturn[${n}]`, "springReturn");
    });
  }
  part.contacts.forEach((contact, c) => {
    contact.closedIn.forEach((position, n) => {
      check(position, `contacts[${c}].closedIn[${n}]`, "closedIn");
    });
  });
}

/** Every pin that a module's own fields name, with the place that names it. */
function pinsNamedBy({
  power,
  sources,
  behaviour,
}: PartOf<"module">): [path: string, pin: PinId][] {
  const named: [string, PinId][] = [];
  const take = (path: string, pins: readonly PinId[]) => {
    pins.forEach((pin, n) => {
      named.push([`${path}[${n}]`, pin]);
    });
  };
  take("power.supply", power?.supply ?? []);
  take("power.ground", power?.ground ?? []);
  sources?.forEach((source, n) => {
    take(`sources[${n}].between`, source.between);
  });
  behaviour?.paths.forEach((one, n) => {
    take(`behaviour.paths[${n}].between`, one.between);
    if (one.input !== undefined) named.push([`behaviour.paths[${n}].input`, one.input]);
  });
  behaviour?.loads?.forEach((load, n) => {
    take(`behaviour.loads[${n}].between`, load.between);
  });
  return named;
}

function checkPinLists(part: PartOf<"module"> | PartOf<"inline">, path: string, report: Report) {
  const owner = `part ${part.id}`;
  const pins = new Set<PinId>();
  part.pins.forEach((pin, n) => {
    if (pins.has(pin.id)) report(issue("duplicate-pin", `${path}.pins[${n}].id`, owner, pin.id));
    pins.add(pin.id);
  });
  if (part.kind !== "module") return;
  for (const [field, pin] of pinsNamedBy(part)) {
    if (pins.has(pin)) continue;
    report(issue("unknown-pin", `${path}.${field}`, owner, field, part.id, pin, pins));
  }
}

function checkParts(parts: readonly Part[], path: string, sheets: ReadonlySet<Id>, report: Report) {
  parts.forEach((part, n) => {
    const at = `${path}[${n}]`;
    if (!sheets.has(part.sheet)) {
      report(issue("unknown-sheet", `${at}.sheet`, `part ${part.id}`, part.sheet));
    }
    if (part.kind === "switch") checkSwitch(part, at, report);
    if (part.kind === "module" || part.kind === "inline") checkPinLists(part, at, report);
  });
}

function checkWires(wires: readonly Wire[], path: string, known: Known, report: Report) {
  wires.forEach((wire, n) => {
    for (const end of ["from", "to"] as const) {
      const fault = known.pinFault(wire[end], `${path}[${n}].${end}`, `wire ${wire.id}`, end);
      if (fault) report(fault);
    }
  });
}

function checkMachines(job: Job, sheets: ReadonlySet<Id>, known: Known, report: Report) {
  job.machines.forEach((machine, m) => {
    const path = `machines[${m}]`;
    machine.wires.forEach((wire, n) => {
      const owner = `a wire of machine ${machine.id}`;
      const fault = known.cavityFault(wire.cavity, `${path}.wires[${n}].cavity`, owner);
      if (fault) report(fault);
    });
    const added = (machine.changes ?? []).flatMap((change) => change.parts ?? []);
    const here = new Known([...job.diagram.parts, ...added], []);
    machine.changes?.forEach((change, c) => {
      const inside = `${path}.changes[${c}]`;
      checkParts(change.parts ?? [], `${inside}.parts`, sheets, report);
      checkWires(change.wires ?? [], `${inside}.wires`, here, report);
    });
  });
}

function checkStandIns(job: Job, known: Known, report: Report) {
  job.standIns?.forEach((standIn, n) => {
    const path = `standIns[${n}]`;
    const owner = `stand-in ${standIn.id}`;
    if (!known.hasPart(standIn.replaces)) {
      report(issue("unknown-part", `${path}.replaces`, owner, "replaces", standIn.replaces));
    }
    standIn.map.forEach((one, i) => {
      const fault = known.cavityFault(one.cavity, `${path}.map[${i}].cavity`, owner);
      if (fault) report(fault);
    });
  });
}

/**
 * What is wrong with the references of a job whose shape is right; empty when nothing is.
 * Doubled marks and links are findings of the check and no faults of the file. What a reading or
 * trial names may be gone: whether it still proves anything is for the check to say.
 */
export function referenceIssues(job: Job): readonly Issue[] {
  const issues: Issue[] = [];
  const report: Report = (found) => {
    if (issues.length < LIMITS.issues) issues.push(found);
  };
  const sheets = new Set(job.diagram.sheets.map((sheet) => sheet.id));
  const added = job.machines.flatMap((machine) =>
    (machine.changes ?? []).flatMap((change) => change.parts ?? []),
  );
  const drawn = new Known(job.diagram.parts, job.plugs);
  const anywhere = new Known([...job.diagram.parts, ...added], job.plugs);

  checkIds(job, report);
  for (const { file, path, owner } of imageUsesOf(job)) {
    if (safeFile(file) === null) report(issue("picture-path", path, owner, file));
  }
  checkParts(job.diagram.parts, "diagram.parts", sheets, report);
  checkWires(job.diagram.wires, "diagram.wires", drawn, report);
  job.links.forEach((link, n) => {
    const owner = `link ${n + 1}`;
    const pin = anywhere.pinFault(link.pin, `links[${n}].pin`, owner, "pin");
    const cavity = drawn.cavityFault(link.cavity, `links[${n}].cavity`, owner);
    if (pin) report(pin);
    if (cavity) report(cavity);
  });
  checkMachines(job, sheets, drawn, report);
  checkStandIns(job, anywhere, report);
  return issues;
}
