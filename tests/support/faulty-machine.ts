/**
 * Machines with one fault, made by editing the drawing as a mischievous hand would the machine: wires
 * taken away, straps and resistors put in, grounds lifted from the frame, contacts that stay as they
 * are. Nothing of the program's own faults is used. The same generator state gives the same fault.
 */
import type { Random } from "../../src/base/index.ts";
import { pinsOf } from "../../src/circuit/index.ts";
import type { Job, Part, PinRef, Wire } from "../../src/job/index.ts";

interface Drawing {
  parts: Part[];
  wires: Wire[];
}

/** What was done, for the message of a test that fails. */
export interface Faulty {
  readonly job: Job;
  readonly did: string;
}

const at = { sheet: "sheet1", at: [0, 0], turn: 0 } as const;
const part = (kind: string, id: string, fields: object = {}): Part =>
  ({ kind, id, ...at, ...fields }) as unknown as Part;

/** 10 mΩ to 100 kΩ, every decade as likely. */
const someOhms = (random: Random): number => 10 ** (random.next() * 7 - 2);

const FAULTS: readonly ((random: Random, drawing: Drawing) => string | null)[] = [
  function openWire(random, { wires }) {
    const [gone] = wires.splice(random.below(wires.length), 1);
    return `${gone?.from} to ${gone?.to} open`;
  },
  function corrodedWire(random, { parts, wires }) {
    const wire = random.pick(wires);
    const ohms = someOhms(random);
    parts.push(part("resistor", "RX", { ohms }));
    wires.push({ id: "WX", from: "RX:2", to: wire.to });
    wires[wires.indexOf(wire)] = { ...wire, to: "RX:1" };
    return `${ohms} Ω in ${wire.id}`;
  },
  function corrodedTerminal(random, drawing) {
    // what is probed there is the part's own side: its wires end beyond the rust
    const { parts, wires } = drawing;
    const pin = somePin(random, drawing);
    const ohms = random.chance(0.3) ? 1e7 : someOhms(random);
    wires.forEach((wire, index) => {
      const moved = (ref: PinRef) => (ref === pin ? "SX:1" : ref);
      wires[index] = { ...wire, from: moved(wire.from), to: moved(wire.to) };
    });
    parts.push(part("splice", "SX"), part("resistor", "RX", { ohms }));
    wires.push({ id: "WX", from: "SX:1", to: "RX:1" }, { id: "WY", from: "RX:2", to: pin });
    return `${ohms} Ω at ${pin}`;
  },
  function corrodedCrimp(random, { parts, wires }) {
    // one wire of several loses the terminal, and the probe touches that wire's end
    const wire = random.pick(wires);
    const pin = wire.from;
    const ohms = someOhms(random);
    const moved = (ref: PinRef) => (ref === pin ? "SX:1" : ref);
    wires.forEach((one, index) => {
      if (one !== wire) wires[index] = { ...one, from: moved(one.from), to: moved(one.to) };
    });
    parts.push(part("splice", "SX"), part("resistor", "RX", { ohms }));
    wires.push({ id: "WX", from: "SX:1", to: "RX:1" }, { id: "WY", from: "RX:2", to: pin });
    return `${ohms} Ω between ${wire.id} and the rest at ${pin}`;
  },
  function liftedGround(random, { parts }) {
    const grounds = parts.filter(({ kind }) => kind === "ground");
    if (grounds.length === 0) return null;
    const ground = random.pick(grounds);
    parts[parts.indexOf(ground)] = { ...ground, place: "nowhere at all" } as Part;
    return `${ground.id} lifted`;
  },
  function corrodedGround(random, { parts, wires }) {
    const grounds = parts.filter(({ kind }) => kind === "ground");
    if (grounds.length === 0) return null;
    const ground = random.pick(grounds);
    const place = "place" in ground ? (ground.place ?? "") : "";
    const ohms = someOhms(random);
    parts[parts.indexOf(ground)] = { ...ground, place: "behind the rust" } as Part;
    parts.push(part("resistor", "RX", { ohms }), part("ground", "EX", { place }));
    wires.push({ id: "WX", from: `${ground.id}:1`, to: "RX:1" });
    wires.push({ id: "WY", from: "RX:2", to: "EX:1" });
    return `${ohms} Ω under ${ground.id}`;
  },
  function partedSplice(_random, { parts, wires }) {
    const splice = parts.find(({ kind }) => kind === "splice");
    if (!splice) return null;
    const ref = `${splice.id}:1`;
    wires.forEach((wire, index) => {
      const end = `loose${index}`;
      if (wire.from !== ref && wire.to !== ref) return;
      parts.push(part("splice", end));
      wires[index] = {
        ...wire,
        from: wire.from === ref ? `${end}:1` : wire.from,
        to: wire.to === ref ? `${end}:1` : wire.to,
      };
    });
    return `${splice.id} parted`;
  },
  function touching(random, drawing) {
    const [one, other] = [somePin(random, drawing), somePin(random, drawing)];
    if (one === other) return null;
    drawing.parts.push(part("resistor", "RX", { ohms: 0.01 }));
    drawing.wires.push({ id: "WX", from: one, to: "RX:1" }, { id: "WY", from: "RX:2", to: other });
    return `${one} touches ${other}`;
  },
  function leaking(random, drawing) {
    const [one, other] = [somePin(random, drawing), somePin(random, drawing)];
    if (one === other) return null;
    const ohms = someOhms(random);
    drawing.parts.push(part("resistor", "RX", { ohms }));
    drawing.wires.push({ id: "WX", from: one, to: "RX:1" }, { id: "WY", from: "RX:2", to: other });
    return `${ohms} Ω from ${one} to ${other}`;
  },
  function grounded(random, drawing) {
    const pin = somePin(random, drawing);
    const ohms = random.chance(0.5) ? 0.01 : someOhms(random);
    drawing.parts.push(part("resistor", "RX", { ohms }), part("ground", "EX"));
    drawing.wires.push({ id: "WX", from: pin, to: "RX:1" }, { id: "WY", from: "RX:2", to: "EX:1" });
    return `${ohms} Ω from ${pin} to ground`;
  },
  function onSupply(random, drawing) {
    const pin = somePin(random, drawing);
    const ohms = random.chance(0.5) ? 0.01 : someOhms(random);
    drawing.parts.push(part("resistor", "RX", { ohms }));
    drawing.wires.push({ id: "WX", from: pin, to: "RX:1" }, { id: "WY", from: "RX:2", to: "G1:+" });
    return `${ohms} Ω from ${pin} to battery plus`;
  },
  function flatBattery(random, { parts }) {
    const index = parts.findIndex(({ id }) => id === "G1");
    const battery = parts[index];
    if (battery?.kind !== "battery") return null;
    const volts = (battery.volts ?? 12) * random.next();
    parts[index] = { ...battery, volts, ohms: someOhms(random) / 1000 };
    return `battery at ${volts} V`;
  },
  function stuckSwitch(random, { parts }) {
    const switches = parts.filter(({ kind }) => kind === "switch");
    if (switches.length === 0) return null;
    const one = random.pick(switches);
    if (one.kind !== "switch") return null;
    const isClosed = random.chance(0.5);
    const closedIn = isClosed ? one.positions : [];
    const struck = random.below(one.contacts.length);
    const contacts = one.contacts.map((contact, index) =>
      index === struck ? { ...contact, closedIn } : contact,
    );
    parts[parts.indexOf(one)] = { ...one, contacts } as Part;
    return `${one.id} stuck ${isClosed ? "closed" : "open"}`;
  },
  function stuckRelay(random, { parts }) {
    const relays = parts.filter(({ kind }) => kind === "relay");
    if (relays.length === 0) return null;
    const one = random.pick(relays);
    if (one.kind !== "relay") return null;
    // hardly any volts pull it in, or more than there are
    const pullIn = random.chance(0.5) ? 0.0001 : 5;
    parts[parts.indexOf(one)] = { ...one, pullIn, dropOut: pullIn / 2 };
    return `${one.id} pulls in at ${pullIn}`;
  },
];

function somePin(random: Random, { parts }: Drawing): PinRef {
  const refs = parts.flatMap((one) => pinsOf(one).map(({ id }) => `${one.id}:${id}`));
  return random.pick(refs);
}

/** The machine with one fault in it; null where the one drawn has nothing to befall. */
export function faultyMachine(random: Random, job: Job): Faulty | null {
  const drawing: Drawing = { parts: [...job.diagram.parts], wires: [...job.diagram.wires] };
  const did = random.pick(FAULTS)(random, drawing);
  return did === null ? null : { job: { ...job, diagram: { ...job.diagram, ...drawing } }, did };
}
