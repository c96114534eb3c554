/** Which node is what and which branches there are in one state of a true machine. */
import type { Id, Part, PartOf, PinRef, When } from "../../../src/job/index.ts";
import type { Branch } from "./star-mesh.ts";
import type { TrueMachine } from "./true-machine.ts";

/** A branch whose ohms depend on what lies across it or runs through it. */
export interface Bent {
  readonly a: number;
  readonly b: number;
  readonly is: "filament" | "diode";
  /** Filament: ohms at rated volts. Diode: ohms in series. */
  readonly ohms: number;
  /** Rated volts, or the volts that a diode keeps. */
  readonly volts: number;
}

/** Closed while its relay is pulled in. */
export interface Contact {
  readonly relay: Id;
  readonly a: number;
  readonly b: number;
}

export interface MachineState {
  readonly count: number;
  readonly fixed: readonly Branch[];
  readonly bent: readonly Bent[];
  readonly contacts: readonly Contact[];
  readonly coils: readonly { readonly relay: Id; readonly a: number; readonly b: number }[];
  /** Branches that a module adds once it is fed, by what feeds it. */
  readonly driven: readonly {
    readonly plus: number;
    readonly minus: number;
    readonly branches: readonly Branch[];
  }[];
  /** Fuses with their ends, to see what they carry. */
  readonly fuses: readonly { readonly fuse: Id; readonly amps: number; readonly branch: Branch }[];
  nodeOf(probe: string): number;
}

const CLOSED = 0.004;
const GROUNDING = 0.0008;

export function stateOf(machine: TrueMachine, when: When): MachineState {
  const { paper, fault, blown } = machine;
  const { job } = paper;
  const off = new Set([...(when.removed ?? []), ...(when.unplugged ?? [])]);
  const nodes = new Map<string, number>([["chassis", 0]]);
  const node = (name: string): number => {
    const known = nodes.get(name) ?? nodes.size;
    nodes.set(name, known);
    return known;
  };
  const fixed: Branch[] = [];
  const bent: Bent[] = [];
  const contacts: Contact[] = [];
  const coils: MachineState["coils"][number][] = [];
  const driven: MachineState["driven"][number][] = [];
  const fuses: MachineState["fuses"][number][] = [];
  const resistor = (a: number, b: number, ohms: number, volts = 0): Branch => {
    const branch = { a, b, ohms, volts };
    fixed.push(branch);
    return branch;
  };

  /** The part's own side of a terminal: the wire's side, but for a bad joint between the two. */
  const terminal = (pin: PinRef): number => {
    if (fault?.is !== "terminal-ohms" || fault.at !== pin) return node(pin);
    return node(`${pin} beyond the joint`);
  };
  if (fault?.is === "terminal-ohms") resistor(node(fault.at), terminal(fault.at), fault.ohms);
  if (fault?.is === "leak") resistor(node(fault.at), node(fault.to), fault.ohms);

  for (const wire of job.diagram.wires) {
    const bad = fault?.is === "wire-ohms" && fault.at === wire.id ? fault.ohms : 0;
    resistor(node(wire.from), node(wire.to), (machine.wireOhms.get(wire.id) ?? 0.01) + bad);
  }
  const ends = new Map<string, PinRef>();
  for (const part of job.diagram.parts) {
    if (off.has(part.id) && part.kind !== "module") continue;
    const at = (pin: string) => terminal(`${part.id}:${pin}`);
    const isBad = fault?.is === "part-ohms" && fault.at === part.id;
    const ohms = isBad ? fault.ohms : (machine.partOhms.get(part.id) ?? 1);
    switch (part.kind) {
      case "battery":
        resistor(
          at("+"),
          at("-"),
          machine.inner,
          fault?.is === "battery" ? fault.volts : machine.volts,
        );
        break;
      case "ground":
        resistor(at("1"), place(part, node), GROUNDING);
        break;
      case "offpage": {
        const label = (part.label ?? "").trim().toLowerCase();
        const other = ends.get(label);
        if (label !== "" && other !== undefined) resistor(at("1"), node(other), 0.001);
        ends.set(label, `${part.id}:1`);
        break;
      }
      case "fuse":
      case "breaker":
        if (blown.has(part.id)) break;
        fuses.push({
          fuse: part.id,
          amps: part.amps ?? 10,
          branch: resistor(at("1"), at("2"), ohms),
        });
        break;
      case "switch":
        for (const { between, closedIn } of part.contacts) {
          const position = when.switches?.[part.id] ?? part.rest ?? part.positions[0] ?? "";
          const isStuck = fault?.is === "stuck" && fault.at === part.id;
          if (isStuck ? fault.closed : closedIn.includes(position))
            resistor(at(between[0]), at(between[1]), isBad ? ohms : CLOSED);
        }
        break;
      case "relay":
        addRelay(part, at, ohms);
        break;
      case "lamp":
        addLamp(part, at("1"), at("2"), isBad ? fault.ohms : null);
        break;
      case "solenoid":
        resistor(at("1"), at("2"), ohms);
        if (part.diode) bent.push({ a: at("2"), b: at("1"), is: "diode", ohms: 0.05, volts: 0.65 });
        break;
      case "diode":
        if (isBad) resistor(at("A"), at("K"), ohms);
        else bent.push({ a: at("A"), b: at("K"), is: "diode", ohms: 0.05, volts: 0.65 });
        break;
      case "potentiometer":
        resistor(at("1"), at("W"), Math.max(1, ohms * machine.wiper));
        resistor(at("W"), at("2"), Math.max(1, ohms * (1 - machine.wiper)));
        break;
      case "sensor":
        resistor(at("+"), at("-"), 1500);
        resistor(at("S"), at("-"), 3300);
        break;
      case "motor":
      case "heater":
      case "horn":
      case "sender":
      case "resistor":
        resistor(at("1"), at("2"), ohms);
        break;
      case "module":
        if (!off.has(part.id)) addModule(part.id);
        break;
    }
  }

  function addRelay(part: PartOf<"relay">, at: (pin: string) => number, ohms: number): void {
    resistor(at("86"), at("85"), ohms);
    coils.push({ relay: part.id, a: at("86"), b: at("85") });
    if (part.diodeCathode !== undefined) {
      const [a, b] = part.diodeCathode === "86" ? ["85", "86"] : ["86", "85"];
      bent.push({ a: at(a), b: at(b), is: "diode", ohms: 0.05, volts: 0.65 });
    }
    if (fault?.is === "stuck" && fault.at === part.id) {
      if (fault.closed) resistor(at("30"), at("87"), CLOSED);
      return;
    }
    contacts.push({ relay: part.id, a: at("30"), b: at("87") });
  }

  function addLamp(part: PartOf<"lamp">, a: number, b: number, bad: number | null): void {
    const { systemVoltage } = job;
    const watts = part.watts ?? 10;
    if (bad !== null) resistor(a, b, bad);
    else if (part.led) {
      const amps = watts / systemVoltage;
      bent.push({
        a,
        b,
        is: "diode",
        ohms: (systemVoltage * 0.7) / amps,
        volts: systemVoltage * 0.3,
      });
    } else {
      const hot = (systemVoltage ** 2 / watts) * (machine.partOhms.get(part.id) ?? 1);
      bent.push({ a, b, is: "filament", ohms: hot, volts: systemVoltage });
    }
  }

  function addModule(id: Id): void {
    const own = paper.pins.filter(({ pin }) => pin.startsWith(`${id}:`));
    const inner = (pin: PinRef) => {
      const inside = node(`${pin} inside`);
      resistor(terminal(pin), inside, 0.005);
      return inside;
    };
    const feeds = own.filter(({ inside }) => inside === "feed").map(({ pin }) => inner(pin));
    const grounds = own.filter(({ inside }) => inside === "ground").map(({ pin }) => inner(pin));
    const [plus] = feeds;
    const [minus] = grounds;
    if (
      plus === undefined ||
      minus === undefined ||
      (fault?.is === "dead-module" && fault.at === id)
    )
      return;
    for (const feed of feeds) resistor(feed, minus, 180);
    const live: Branch[] = [];
    for (const { pin, inside } of own) {
      const isOn = machine.driving.has(pin);
      if (inside === "input-high") resistor(inner(pin), minus, 4700);
      if (inside === "input-low") resistor(inner(pin), plus, 2200);
      if (inside === "output-high" && isOn)
        live.push({ a: inner(pin), b: plus, ohms: 0.03, volts: 0 });
      if (inside === "output-low" && isOn)
        live.push({ a: inner(pin), b: minus, ohms: 0.03, volts: 0 });
      if (inside === "sensor-ground") resistor(inner(pin), minus, 0.1);
      if (inside === "sensor-supply") live.push({ a: inner(pin), b: minus, ohms: 10, volts: 5 });
      if (inside === "signal") live.push({ a: inner(pin), b: minus, ohms: 500, volts: 2.5 });
    }
    driven.push({ plus, minus, branches: live });
  }

  const battery = job.diagram.parts.find((part) => part.kind === "battery")?.id ?? "";
  const nodeOf = (probe: string): number => {
    if (probe === "battery+" || probe === "battery-") return node(`${battery}:${probe.slice(-1)}`);
    return node(job.links.find(({ cavity }) => cavity === probe)?.pin ?? probe);
  };
  // the page's fixed probes must have their node even where nothing reaches it
  nodeOf("battery+");
  nodeOf("battery-");
  return {
    get count() {
      return nodes.size;
    },
    fixed,
    bent,
    contacts,
    coils,
    driven,
    fuses,
    nodeOf,
  };
}

/** The metal that a ground point is bolted to. */
function place(part: Part, node: (name: string) => number): number {
  const name = (part.place ?? "frame").trim().toLowerCase();
  return node(name === "frame" ? "chassis" : `place ${name}`);
}
